using Evenstep.Planning.Budgets;
using Evenstep.Service.Answering.Metrics;
using Evenstep.Service.Answering.Scheduling;

namespace Evenstep.Service.Answering.Solving;

/// <summary>Certifies the samples one after another in the background, where the scheduler lets nothing wait for it.</summary>
internal sealed partial class SampleWorker(
    SampleQueue samples, SolveGate gate, Certificates certificates, CertifySettings settings, WorkLimits limits, ServiceMeter meter,
    ILogger<SampleWorker> logger) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await foreach (var sample in samples.TakeAllAsync(stoppingToken))
        {
            await CertifyAsync(sample, stoppingToken);
        }
    }

    private async Task CertifyAsync(Sample sample, CancellationToken cancellationToken)
    {
        try
        {
            await gate.RunAsync(
                slot => certificates.Certify(sample.Asked, sample.Plan, slot.Budget(limits with { Units = settings.Limit })),
                SolveClaim.Background,
                cancellationToken);
        }
        catch (OperationCanceledException) when (cancellationToken.IsCancellationRequested)
        {
            throw;
        }
        catch (DisagreementException)
        {
            // Counted and logged already; the answer has been given.
        }
#pragma warning disable CA1031 // Whatever went wrong with one sample, the next ones and the service go on.
        catch (Exception exception)
#pragma warning restore CA1031
        {
            meter.Certified(CertificateOutcome.Undecided);
            LogFailure(exception);
        }
    }

    [LoggerMessage(LogLevel.Error, "A sample could not be certified.")]
    private partial void LogFailure(Exception exception);
}
