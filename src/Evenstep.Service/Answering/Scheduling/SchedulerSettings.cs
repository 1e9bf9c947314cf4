using Evenstep.Planning.Budgets;

namespace Evenstep.Service.Answering.Scheduling;

/// <summary>What the scheduler lets solves take together.</summary>
/// <param name="MostBytes">Memory that all solves that are under way, but for one in the background, and the answers that are
/// being sent may hold together.</param>
/// <param name="SolveBytes">Memory that one solve may hold.</param>
/// <param name="BackgroundShare">The share of one processor's time, from 0 to 1, that is spent in the background at most.</param>
internal sealed record SchedulerSettings(long MostBytes, long SolveBytes, double BackgroundShare)
{
    public const string MemoryKey = "Evenstep:SolvesMemoryMebibytes";
    public const string BackgroundKey = "Evenstep:CertifyProcessorShare";

    private const long Mebibyte = 1024 * 1024;

    /// <summary>While the answers alone take so much, nobody is let in who would want another.</summary>
    public long MostBytesOfAnswers => MostBytes / 2;

    public static readonly SchedulerSettings Usual = new(320 * Mebibyte, WorkLimits.Usual.Bytes, 0.02);

    /// <exception cref="InvalidOperationException">A value is out of range.</exception>
    public static SchedulerSettings From(IConfiguration configuration, WorkLimits limits)
    {
        var mebibytes = configuration.GetValue(MemoryKey, Usual.MostBytes / (double)Mebibyte);
        var share = configuration.GetValue(BackgroundKey, Usual.BackgroundShare);
        return !(mebibytes > 0 && double.IsFinite(mebibytes)) ? throw new InvalidOperationException($"{MemoryKey} must be a number above 0.")
            : share is not (>= 0 and <= 1) ? throw new InvalidOperationException($"{BackgroundKey} must be a number from 0 to 1.")
            : new SchedulerSettings((long)(mebibytes * Mebibyte), limits.Bytes, share);
    }
}
