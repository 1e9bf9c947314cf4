using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>
/// If a reticle eyepiece is asked for, the kit has one that fits a telescope and gives, alone or with a Barlow of the kit,
/// at least the power asked.
/// </summary>
internal static class ReticleDemand
{
    public static void Keep(PurchaseModel model)
    {
        if (model.Problem.Demands.ReticleLeastPower is not { } asked)
        {
            return;
        }

        var owned = model.Problem.Owned.Where(item => item.IsReticle).Select(item => (item, (ILiteral)model.Cp.TrueLiteral()));
        var bought = model.Space.Choices.Where(choice => choice.Representative.IsReticle)
            .Select(choice => (choice.Representative, (ILiteral)model.Chosen(choice)));
        model.Cp.AddBoolOr(owned.Concat(bought).SelectMany(pair => WaysToServe(model, pair.Item1, pair.Item2, asked)));
    }

    /// <summary>Literals, each of which is true only if the reticle eyepiece is in the kit and reaches the power.</summary>
    private static IEnumerable<ILiteral> WaysToServe(PurchaseModel model, Item reticle, ILiteral inKit, double asked)
    {
        Item[] ownedBarlows = [.. model.Problem.Owned.Where(item => item.IsBarlow)];
        if (Serves(model, reticle, ownedBarlows, asked))
        {
            yield return inKit;
            yield break;
        }

        foreach (var barlow in model.Space.Choices.Where(choice => choice.Representative.IsBarlow))
        {
            if (Serves(model, reticle, [barlow.Representative], asked))
            {
                var both = model.Cp.NewBoolVar("");
                model.Cp.AddBoolAnd([inKit, model.Chosen(barlow)]).OnlyEnforceIf(both);
                yield return both;
            }
        }
    }

    private static bool Serves(PurchaseModel model, Item reticle, Item[] barlows, double asked) =>
        Reticle.HighestPower(reticle, barlows, model.Problem.Telescopes) is { } power && Tolerance.AtLeast(power / asked, 1);
}
