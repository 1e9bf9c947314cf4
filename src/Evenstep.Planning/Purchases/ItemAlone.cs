using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>An item that nothing else is bought with, beside what is owned: what the rules that keep out single items look at.</summary>
internal sealed class ItemAlone(Item item, OwnedKit owned)
{
    private NotUsable? shortfall;
    private bool isShortfallKnown;

    public Item Item => item;

    public OwnedKit Owned => owned;

    public PurchaseProblem Problem => owned.Problem;

    public bool IsOwned => Problem.Owned.Contains(item);

    /// <summary>Why even the best of its views without a Barlow is of no use: the reason that comes last in their order. Null if one
    /// is usable, and for a Barlow or a reticle eyepiece, which have no such view.</summary>
    public NotUsable? Shortfall
    {
        get
        {
            if (!isShortfallKnown)
            {
                (shortfall, isShortfallKnown) = (ShortfallOfViews(), true);
            }

            return shortfall;
        }
    }

    private NotUsable? ShortfallOfViews()
    {
        if (item.Ocular is not { } ocular || item.IsReticle)
        {
            return null;
        }

        var (last, isBought) = (NotUsable.BelowRange, !IsOwned);
        foreach (var telescope in Problem.Telescopes)
        {
            if (View.Of(telescope, ocular) is { } view)
            {
                if (view.NotUsableBecause(Problem.Observer, Problem.Preferences.LeastApparentFieldDeg, isBought) is not { } because)
                {
                    return null;
                }

                last = because > last ? because : last;
            }
        }

        return last;
    }
}
