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

/// <summary>The value of each stage, the quality 0 where only the price is preferred. All not a number if no set is allowed.</summary>
internal sealed record StageFigures(double LnLargestStep, double MeanExcess, double Quality, double Preference, double Price)
{
    public static readonly StageFigures Infeasible = new(double.NaN, double.NaN, double.NaN, double.NaN, double.NaN);

    public bool IsInfeasible => double.IsNaN(LnLargestStep);

    /// <summary>The figures that count, worked out from the set itself.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="purchases">The set.</param>
    /// <param name="measure">Of the problem, once its first stage is known; without one the quality is 0.</param>
    public static StageFigures Of(PurchaseProblem problem, IReadOnlyCollection<Item> purchases, QualityMeasure? measure = null)
    {
        var kit = Kit.Of(problem, purchases);
        var figures = kit.FiguresIn(Candidacy.Of(problem).Telescopes);
        return new StageFigures(
            Step.Max(problem.EnoughStep, figures.LargestStep).Ln,
            figures.MeanExcess,
            measure?.Of(kit) ?? 0,
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
