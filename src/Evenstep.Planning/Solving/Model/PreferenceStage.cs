using Evenstep.Planning.Purchases;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model;

/// <summary>Among the sets that are as good as the best in steps and excess, finds the one to recommend.</summary>
internal sealed class PreferenceStage
{
    private readonly PurchaseModel model;
    private readonly Work work;
    private readonly double lnLargestStep;
    private readonly double mostExcess;

    private PreferenceStage(PurchaseModel model, Work work, double lnLargestStep, double mostExcess)
    {
        this.model = model;
        this.work = work;
        this.lnLargestStep = lnLargestStep;
        this.mostExcess = mostExcess;
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
            var preference = PreferenceModel.Units(model);
            preferred = Least(preference, known);
            model.Cp.Add(preference <= PreferenceModel.UnitsOf(model.Problem, preferred.Purchases));
        }

        var cheapest = Least(PreferenceModel.PriceThenCountThenTies(model), preferred);
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
}
