using Evenstep.Planning.Budgets;

namespace Evenstep.Service.Answering.Scheduling;

/// <summary>What the scheduler lets solves take together.</summary>
/// <param name="MostBytes">Memory that all solves that are under way may hold together, but for one in the background.</param>
/// <param name="SolveBytes">Memory that one solve may hold.</param>
/// <param name="BackgroundShare">The share of one processor's time, from 0 to 1, that is spent in the background at most.</param>
internal sealed record SchedulerSettings(long MostBytes, long SolveBytes, double BackgroundShare)
{
    public const string MemoryKey = "Evenstep:SolvesMemoryMebibytes";
    public const string BackgroundKey = "Evenstep:CertifyProcessorShare";

    private const long Mebibyte = 1024 * 1024;

    public static readonly SchedulerSettings Usual = new(1024 * Mebibyte, WorkLimits.Usual.Bytes, 0.02);

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
