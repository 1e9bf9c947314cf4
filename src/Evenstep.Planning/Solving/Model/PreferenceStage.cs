using System.Collections.Immutable;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Rules;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model;

/// <summary>Among the sets that are as good as the best in steps and excess, finds the one to recommend.</summary>
internal sealed class PreferenceStage
{
    /// <summary>Preference scores are counted in units of 1e-7: degrees, millimetres and grams are given far more coarsely,
    /// so that no two scores that differ become equal.</summary>
    private const double UnitsPerScore = 1e7;

    private readonly PurchaseModel model;
    private readonly Work work;
    private readonly double lnLargestStep;
    private readonly double mostExcess;
    private readonly PreferenceScore score;

    private PreferenceStage(PurchaseModel model, Work work, double lnLargestStep, double mostExcess)
    {
        this.model = model;
        this.work = work;
        this.lnLargestStep = lnLargestStep;
        this.mostExcess = mostExcess;
        score = new PreferenceScore(model.Problem);
    }

    /// <summary>The set to recommend.</summary>
    /// <param name="model">The allowed sets.</param>
    /// <param name="work">What may be done.</param>
    /// <param name="lnLargestStep">To be kept to.</param>
    /// <param name="mostExcess">To be kept to.</param>
    /// <param name="known">A set that keeps to both.</param>
    public static Standing Run(PurchaseModel model, Work work, double lnLargestStep, double mostExcess, Standing known) =>
        new PreferenceStage(model, work, lnLargestStep, mostExcess).Search(known);

    private Standing Search(Standing known) => model.Temporarily(() =>
    {
        var excess = MeanExcessModel.Add(model, lnLargestStep, mostExcess);
        model.Cp.Add(excess <= MeanExcessModel.UnitsAtMost(mostExcess));
        var preferred = known with { IsProved = true };
        if (model.Problem.Preferences.Prefer != Prefer.LowPrice)
        {
            var preference = PreferenceUnits();
            preferred = Least(preference, known);
            model.Cp.Add(preference <= UnitsOf(preferred.Purchases));
        }

        var cheapest = Least(PriceThenCountThenTies(), preferred);
        return cheapest with { IsProved = preferred.IsProved && cheapest.IsProved };
    });

    private Standing Least(LinearExpr objective, Standing known)
    {
        model.Cp.Minimize(objective);
        Hint(known);
        var verdict = work.Find(model);
        return verdict.Purchases is { } purchases
            ? Standing.Of(model.Problem, purchases, verdict.IsProved)
            : known with { IsProved = false };
    }

    private void Hint(Standing known)
    {
        model.Cp.Model.SolutionHint = null;
        foreach (var item in model.Items)
        {
            model.Cp.AddHint(model.Bought(item), known.Purchases.Contains(item));
        }
    }

    private LinearExpr PreferenceUnits() => model.Problem.Preferences.Prefer == Prefer.Parfocal
        ? ParfocalGroups()
        : model.Sum(item => (long)Math.Round(score.OfItem(item) * UnitsPerScore));

    private long UnitsOf(ImmutableArray<Item> purchases) => model.Problem.Preferences.Prefer == Prefer.Parfocal
        ? (long)score.Of(purchases)
        : purchases.Sum(item => (long)Math.Round(score.OfItem(item) * UnitsPerScore));

    /// <summary>How many parfocal groups the kit has: those owned, and each other group or single eyepiece that is bought.</summary>
    private LinearExpr ParfocalGroups()
    {
        var owned = model.Problem.Owned.Select(item => item.ParfocalGroup).OfType<string>().ToHashSet();
        List<LinearExpr> groups = [LinearExpr.Constant((long)score.Of([]))];
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

    private LinearExpr PriceThenCountThenTies() => model.Sum(item =>
        ((((Limits.MostPurchases + 1) * Budget.Cents(item)) + 1) * Ties.SumLimit) + Ties.Fingerprint(item));
}
