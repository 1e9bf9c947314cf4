using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Solving.Model;

/// <summary>Finds the least mean excess of the allowed sets that keep to a largest step.</summary>
internal static class MeanExcessStage
{
    /// <summary>A set of least mean excess.</summary>
    /// <param name="model">The allowed sets.</param>
    /// <param name="work">What may be done.</param>
    /// <param name="lnLargestStep">To be kept to.</param>
    /// <param name="known">A set that does.</param>
    public static Standing Run(PurchaseModel model, Work work, double lnLargestStep, Standing known)
    {
        if (Tolerance.AtMost(known.Figures.MeanExcess, LeastExcess(model)))
        {
            return known with { IsProved = true };
        }

        var verdict = model.Temporarily(() =>
        {
            var excess = MeanExcessModel.Add(model, lnLargestStep, known.Figures.MeanExcess);
            model.Cp.Minimize(excess);
            return work.Find(model);
        });
        var found = verdict.Purchases is { } purchases ? Standing.Of(model.Problem, purchases, verdict.IsProved) : known;
        return found.Figures.MeanExcess < known.Figures.MeanExcess ? found : known with { IsProved = verdict.IsProved };
    }

    private static double LeastExcess(PurchaseModel model) => model.Space.Telescopes.Sum(views =>
        new Jumps(views, model.Problem.EnoughMismatch, model.Space.Telescopes.Length).LeastExcess());
}
