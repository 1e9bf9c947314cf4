using System.Collections.Immutable;
using Evenstep.Planning.Purchases;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model.Subproblems;

/// <summary>What decides between sets that are equally good in steps, excess and quality, as a whole number to be made least: a
/// price in hundredths, a count, a score, or several of them in one, which is why it is a plain number.</summary>
internal abstract class Measure
{
    public static readonly Measure Price = new Sum(item => item.ExactPrice.Hundredths) { RanksByPrice = true };

    public static readonly Measure Count = new Sum(_ => 1);

    /// <summary>The price, then the number of items.</summary>
    public static readonly Measure PriceThenCount = new Sum(OfPriceThenCount) { RanksByPrice = true };

    /// <summary>The price, then the number of items, then the fixed rule for ties.</summary>
    public static readonly Measure PriceThenCountThenTies =
        new Sum(item => (OfPriceThenCount(item) * Ties.SumLimit) + Ties.Fingerprint(item)) { RanksByPrice = true };

    /// <summary>Whether a set of less measure never costs more.</summary>
    public bool RanksByPrice { get; private init; }

    /// <summary>What the request prefers beside good views; null where that is nothing.</summary>
    public static Measure? PreferenceOf(PurchaseProblem problem) => problem.Preferences.Prefer switch
    {
        Prefer.LightWeight => new Sum(new PreferenceScore(problem).UnitsOfItem),
        Prefer.Parfocal => new ParfocalGroups(problem, new PreferenceScore(problem)),
        _ => null,
    };

    public abstract long Of(ImmutableArray<Item> purchases);

    /// <summary>No less is added by whichever item of the choice is bought.</summary>
    public abstract long LeastOf(Choice choice);

    public abstract LinearExpr In(Master master);

    private static long OfPriceThenCount(Item item) => ((Limits.MostPurchases + 1) * item.ExactPrice.Hundredths) + 1;

    private sealed class Sum(Func<Item, long> amount) : Measure
    {
        public override long Of(ImmutableArray<Item> purchases) => purchases.Sum(amount);

        public override long LeastOf(Choice choice) => choice.Items.Min(amount);

        public override LinearExpr In(Master master) => master.Sum(amount);
    }

    /// <summary>How many parfocal groups the kit has: those owned, and each other group or single eyepiece that is bought.</summary>
    private sealed class ParfocalGroups(PurchaseProblem problem, PreferenceScore score) : Measure
    {
        public override long Of(ImmutableArray<Item> purchases) => (long)score.Of(purchases);

        public override long LeastOf(Choice choice) => 0;

        public override LinearExpr In(Master master)
        {
            var owned = problem.Owned.Select(item => item.ParfocalGroup).OfType<string>().ToHashSet();
            List<LinearExpr> groups = [LinearExpr.Constant((long)score.Of([]))];
            foreach (var group in master.Items.Where(item => item.Ocular is not null).GroupBy(item => item.ParfocalGroup))
            {
                if (group.Key is null)
                {
                    groups.Add(LinearExpr.Sum(group.Select(master.Bought)));
                }
                else if (!owned.Contains(group.Key))
                {
                    var present = master.Cp.NewBoolVar("");
                    groups.Add(present);
                    foreach (var item in group)
                    {
                        master.Cp.AddImplication(master.Bought(item), present);
                    }
                }
            }

            return LinearExpr.Sum(groups);
        }
    }
}
