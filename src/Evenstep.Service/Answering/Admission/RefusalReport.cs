using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Answering.Admission;

/// <summary>Counts refusals, and logs now and then how many there were: not a line for each, for they come when there is too much to do.</summary>
internal sealed partial class RefusalReport(ILogger<RefusalReport> logger, TimeProvider clock) : BackgroundService
{
    public static readonly TimeSpan Every = TimeSpan.FromSeconds(10);

    private readonly long[] counts = new long[Enum.GetValues<RefusalReason>().Length];

    /// <summary>With the clock of the machine.</summary>
    public RefusalReport(ILogger<RefusalReport> logger)
        : this(logger, TimeProvider.System)
    {
    }

    public void Add(RefusalReason reason) => Interlocked.Increment(ref counts[(int)reason]);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Every, clock);
        try
        {
            while (await timer.WaitForNextTickAsync(stoppingToken))
            {
                Tell();
            }
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            Tell();
        }
    }

    private void Tell()
    {
        foreach (var reason in Enum.GetValues<RefusalReason>())
        {
            if (Interlocked.Exchange(ref counts[(int)reason], 0) is > 0 and var count)
            {
                LogRefused(count, Words<RefusalReason>.Of(reason));
            }
        }
    }

    [LoggerMessage(LogLevel.Warning, "Requests were refused at the door: {Count} as {Reason}.")]
    private partial void LogRefused(long count, string reason);
}
