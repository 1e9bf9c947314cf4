using Evenstep.Benchmarks.Problems;
using Evenstep.Benchmarks.Ways;

namespace Evenstep.Benchmarks.Reports;

/// <summary>One way's run on one problem.</summary>
/// <param name="Set">The set that the problem is from.</param>
/// <param name="Number">Of the problem in its set.</param>
/// <param name="Way">The name of the way.</param>
/// <param name="Answer">What it came to.</param>
/// <param name="Milliseconds">How long it took.</param>
/// <param name="Bytes">What it allocated on the managed heap.</param>
internal sealed record Measurement(ProblemSet Set, int Number, string Way, Answer Answer, double Milliseconds, long Bytes)
{
    /// <summary>Whether the way takes such problems at all.</summary>
    public bool IsCarried => Answer.Ending != Ending.NotCarried;

    /// <summary>Whether it was given up at a known time, and would have taken longer.</summary>
    public bool WasGivenUp => Answer.Ending is Ending.Capped or Ending.WorkLimit;

    public bool IsProved => Answer.Ending == Ending.Proved;

    public string Problem => $"{Set.Name}, problem {Number}";
}
