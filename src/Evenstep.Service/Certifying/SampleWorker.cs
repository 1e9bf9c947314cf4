using Evenstep.Planning.Budgets;
using Evenstep.Service.Metrics;
using Evenstep.Service.Recommendations;

namespace Evenstep.Service.Certifying;

/// <summary>Certifies the samples one after another, in a place of the gate that no request wants.</summary>
internal sealed partial class SampleWorker(
    SampleQueue samples, SolveGate gate, Certificates certificates, CertifySettings settings, ServiceMeter meter, ILogger<SampleWorker> logger) : BackgroundService
{
    /// <summary>A certificate that had to give way so often is given up: the service is busy.</summary>
    private const int MostAttempts = 3;

    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(50);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await foreach (var sample in samples.TakeAllAsync(stoppingToken))
        {
            await CertifyAsync(sample, stoppingToken);
        }
    }

    private async Task CertifyAsync(Sample sample, CancellationToken stopping)
    {
        for (var attempts = 0; attempts < MostAttempts;)
        {
            var attempt = Attempt.GaveWay;
            if (gate.TryRunAside(leave => attempt = TryCertify(sample, leave), stopping))
            {
                attempts++;
                if (attempt == Attempt.Ended)
                {
                    return;
                }
            }

            await Task.Delay(Pause, stopping);
        }

        meter.Certified(Verdict.Dropped);
    }

    private Attempt TryCertify(Sample sample, CancellationToken leave)
    {
        try
        {
            certificates.Certify(sample.Asked, sample.Plan, new WorkBudget(settings.Limit, leave));
        }
        catch (OperationCanceledException) when (leave.IsCancellationRequested)
        {
            return Attempt.GaveWay;
        }
        catch (DisagreementException)
        {
            // Counted and logged already; the answer has been given.
        }
#pragma warning disable CA1031 // Whatever went wrong with one sample, the next ones and the service go on.
        catch (Exception exception)
#pragma warning restore CA1031
        {
            meter.Certified(Verdict.Undecided);
            LogFailure(exception);
        }

        return Attempt.Ended;
    }

    private enum Attempt
    {
        Ended,
        GaveWay,
    }

    [LoggerMessage(LogLevel.Error, "A sample could not be certified.")]
    private partial void LogFailure(Exception exception);
}
