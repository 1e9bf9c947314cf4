using Evenstep.Service.Answering.Health;
using Evenstep.Service.Answering.Metrics;

namespace Evenstep.Service.Features.Health;

/// <summary>
/// Answers requests of its own at start: the first ones load the solver and compile what they pass through, and a service
/// that cannot answer is not ready.
/// </summary>
internal sealed partial class WarmUp(
    WarmUpRequests requests, IHostApplicationLifetime lifetime, Readiness readiness, ServiceMeter meter, ILogger<WarmUp> logger) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            requests.TryEngines(stoppingToken);
            await StartedAsync(stoppingToken);
            await requests.AnswerAllAsync(stoppingToken);
            readiness.Succeed();
            LogReady();
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // The service stops before it was ready.
        }
#pragma warning disable CA1031 // Whatever went wrong, the answer is the same: not ready, and logged.
        catch (Exception exception)
#pragma warning restore CA1031
        {
            readiness.Fail();
            LogFailure(exception);
        }
        finally
        {
            meter.Begin();
        }
    }

    /// <summary>The routes are there once the service has started.</summary>
    private async Task StartedAsync(CancellationToken stopping)
    {
        var started = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        await using var registration = lifetime.ApplicationStarted.Register(started.SetResult);
        await started.Task.WaitAsync(stopping);
    }

    [LoggerMessage(LogLevel.Information, "The warm-up has finished; the service is ready.")]
    private partial void LogReady();

    [LoggerMessage(LogLevel.Error, "The warm-up failed; the service is not ready.")]
    private partial void LogFailure(Exception exception);
}
