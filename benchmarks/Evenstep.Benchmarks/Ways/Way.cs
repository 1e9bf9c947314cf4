using Evenstep.Benchmarks.Problems;
using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks.Ways;

/// <summary>A way of solving the purchase problem.</summary>
internal abstract class Way(string name)
{
    public string Name => name;

    /// <summary>Ours, so that it is measured on every problem, and its allocation too.</summary>
    public virtual bool IsOurs => false;

    /// <summary>Whether the way is asked for problem number n of a set.</summary>
    public virtual bool IsAsked(ProblemSet set, int number) => IsOurs || number < set.CountForOthers;

    public abstract Answer Solve(PurchaseProblem problem, TimeSpan cap);
}

/// <summary>One of our engines, with the work limit that the service ships with.</summary>
/// <param name="name">In the report.</param>
/// <param name="solve">Null for a problem that the engine does not carry.</param>
internal sealed class EngineWay(string name, Func<PurchaseProblem, double, CancellationToken, Plan?> solve) : Way(name)
{
    private const double ShippedWorkLimit = 10;

    public override bool IsOurs => true;

    public override Answer Solve(PurchaseProblem problem, TimeSpan cap)
    {
        using var watch = new CancellationTokenSource(cap);
        try
        {
            return solve(problem, ShippedWorkLimit, watch.Token) is { } plan ? AnswerOf(plan) : new Answer(Ending.NotCarried);
        }
        catch (OperationCanceledException)
        {
            return new Answer(Ending.Capped);
        }
    }

    /// <summary>The stage values that the engine claims, not worked out again: they are what is compared.</summary>
    private static Answer AnswerOf(Plan plan) => plan switch
    {
        { Outcome: Outcome.Infeasible } => Answer.Infeasible,
        { IsProved: true, Values: { } values } => new Answer(
            Ending.Proved,
            new StageFigures(
                values.LeastLargestStep.Ln,
                values.LeastMeanExcess,
                values.GreatestQuality ?? 0,
                values.Preference,
                (double)plan.Purchases.Sum(item => item.Price))),
        _ => new Answer(Ending.WorkLimit),
    };
}
