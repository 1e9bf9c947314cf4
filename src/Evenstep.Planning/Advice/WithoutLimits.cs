using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>
/// What a demand could get at the most if no limit were in the way: with all that is owned and every item that is no candidate for
/// no reason but a limit. What asks for more can never be met, whatever the limits.
/// </summary>
public sealed class WithoutLimits
{
    private readonly PurchaseProblem loose;
    private readonly ImmutableArray<Item> candidates;

    private WithoutLimits(PurchaseProblem loose, ImmutableArray<Item> candidates) => (this.loose, this.candidates) = (loose, candidates);

    public static WithoutLimits Of(PurchaseProblem problem)
    {
        var loose = problem with
        {
            Limits = new Limits
            {
                Budget = (decimal)Bounds.Budget.Most,
                MaxPurchases = Limits.MostPurchases,
                MaxBarlows = Limits.MostBarlows,
                AllowedOverlaps = Limits.MostOverlaps,
            },
        };
        return new WithoutLimits(loose, Candidacy.Of(loose).Candidates);
    }

    /// <summary>Whether the demand can be met for all that is known of it alone.</summary>
    public bool MayMeet(FramingDemand framing) => WidestFieldDeg(framing.TelescopeIndex) is { } widest && FramingRule.IsWide(widest, framing.WidthDeg);

    /// <summary>Whether a reticle eyepiece may give at least this power.</summary>
    public bool MayReach(double leastPower) => ReticlePower() is { } power && Tolerance.AtLeast(power / leastPower, 1);

    /// <summary>The widest true field, in degrees, of a usable view in one telescope or in any; null if there is none.</summary>
    public double? WidestFieldDeg(int? telescopeIndex)
    {
        var telescopes = telescopeIndex is { } index ? loose.Telescopes.Slice(index, 1) : loose.Telescopes;
        return telescopes.SelectMany(ViewsIn).Where(view => view.IsUsable).Max(view => (double?)view.View.TrueFieldDeg);
    }

    /// <summary>The highest power of a reticle eyepiece; null if there is none that fits.</summary>
    public double? ReticlePower()
    {
        Item[] all = [.. loose.Owned, .. candidates];
        Item[] barlows = [.. all.Where(item => item.IsBarlow)];
        return all.Where(item => item.IsReticle).Max(item => Reticle.HighestPower(item, barlows, loose.Telescopes));
    }

    /// <summary>Alone, and of what is owned through every Barlow: what is bought is usable alone somewhere, and a Barlow shows less.</summary>
    private IEnumerable<KitView> ViewsIn(TelescopeInUse telescope)
    {
        Item[] barlows = [.. loose.Owned.Concat(candidates).Where(item => item.IsBarlow)];
        return
        [
            .. candidates.Where(item => item.Ocular is not null).SelectMany(item => KitViews.Alone(loose, telescope, item, bought: true)),
            .. loose.Owned.Where(item => item.Ocular is not null).SelectMany(item => KitViews.Alone(loose, telescope, item, bought: false)
                .Concat(barlows.SelectMany(barlow => KitViews.Through(loose, telescope, item, eyepieceBought: false, barlow, barlowBought: true)))),
        ];
    }
}
