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
    /// <summary>Whether the way took the problem on at all.</summary>
    public bool WasTried => Answer.Ending is not (Ending.NotCarried or Ending.TooLarge or Ending.Failed);

    public bool IsProved => Answer.Ending == Ending.Proved;

    public string Problem => $"{Set.Name}, problem {Number}";
}
