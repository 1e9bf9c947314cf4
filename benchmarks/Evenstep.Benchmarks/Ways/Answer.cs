using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks.Ways;

/// <summary>How a way of solving ended.</summary>
internal enum Ending
{
    /// <summary>Proved best at every stage, or proved that there is no allowed set.</summary>
    Proved,

    /// <summary>Its own work limit ended the proof.</summary>
    WorkLimit,

    /// <summary>The time was up.</summary>
    Capped,

    /// <summary>The problem does not fit into memory in this form, so nothing was tried.</summary>
    TooLarge,

    /// <summary>The way does not carry such problems.</summary>
    NotCarried,

    /// <summary>It threw, or its solver reported an error.</summary>
    Failed,
}

/// <summary>The value of each stage; null for what a way does not compute. No plan at all if no set is allowed.</summary>
internal sealed record StageFigures(double LnLargestStep, double MeanExcess, double Preference, double Price)
{
    public static readonly StageFigures Infeasible = new(double.NaN, double.NaN, double.NaN, double.NaN);

    public bool IsInfeasible => double.IsNaN(LnLargestStep);

    /// <summary>The figures that count, worked out from the set itself.</summary>
    public static StageFigures Of(PurchaseProblem problem, IReadOnlyCollection<Item> purchases)
    {
        var kit = Kit.Of(problem, purchases);
        return new StageFigures(
            Math.Max(problem.EnoughStep.Ln, kit.Figures.LargestStep.Ln),
            kit.Figures.MeanExcess,
            new PreferenceScore(problem).Of(purchases),
            (double)kit.TotalPrice);
    }
}

/// <summary>What a way came to.</summary>
/// <param name="Ending">How.</param>
/// <param name="Figures">Of the stages, if it was proved.</param>
internal sealed record Answer(Ending Ending, StageFigures? Figures = null)
{
    public static readonly Answer Infeasible = new(Ending.Proved, StageFigures.Infeasible);
}
