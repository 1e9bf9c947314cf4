using System.Collections.Immutable;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Rules;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model;

/// <summary>States to the solver what decides between sets that are equally good in steps and excess.</summary>
internal static class PreferenceModel
{
    /// <summary>Preference scores are counted in units of 1e-7: degrees, millimetres and grams are given far more coarsely,
    /// so that no two scores that differ become equal.</summary>
    private const double UnitsPerScore = 1e7;

    /// <summary>The preference score, in units.</summary>
    public static LinearExpr Units(PurchaseModel model)
    {
        if (model.Problem.Preferences.Prefer == Prefer.Parfocal)
        {
            return ParfocalGroups(model);
        }

        var score = new PreferenceScore(model.Problem);
        return model.Sum(item => Units(score, item));
    }

    public static long UnitsOf(PurchaseProblem problem, ImmutableArray<Item> purchases)
    {
        var score = new PreferenceScore(problem);
        return problem.Preferences.Prefer == Prefer.Parfocal ? (long)score.Of(purchases) : purchases.Sum(item => Units(score, item));
    }

    /// <summary>The price, then the number of items.</summary>
    public static LinearExpr PriceThenCount(PurchaseModel model) => model.Sum(PriceThenCount);

    public static long PriceThenCountOf(ImmutableArray<Item> purchases) => purchases.Sum(PriceThenCount);

    /// <summary>The price, then the number of items, then the fixed rule for ties.</summary>
    public static LinearExpr PriceThenCountThenTies(PurchaseModel model) =>
        model.Sum(item => (PriceThenCount(item) * Ties.SumLimit) + Ties.Fingerprint(item));

    private static long PriceThenCount(Item item) => ((Limits.MostPurchases + 1) * Budget.Cents(item)) + 1;

    private static long Units(PreferenceScore score, Item item) => (long)Math.Round(score.OfItem(item) * UnitsPerScore);

    /// <summary>How many parfocal groups the kit has: those owned, and each other group or single eyepiece that is bought.</summary>
    private static LinearExpr ParfocalGroups(PurchaseModel model)
    {
        var owned = model.Problem.Owned.Select(item => item.ParfocalGroup).OfType<string>().ToHashSet();
        List<LinearExpr> groups = [LinearExpr.Constant((long)new PreferenceScore(model.Problem).Of([]))];
        foreach (var group in model.Items.Where(item => item.Ocular is not null).GroupBy(item => item.ParfocalGroup))
        {
            if (group.Key is null)
            {
                groups.Add(LinearExpr.Sum(group.Select(model.Bought)));
            }
            else if (!owned.Contains(group.Key))
            {
                var present = model.Cp.NewBoolVar("");
                groups.Add(present);
                foreach (var item in group)
                {
                    model.Cp.AddImplication(model.Bought(item), present);
                }
            }
        }

        return LinearExpr.Sum(groups);
    }
}
