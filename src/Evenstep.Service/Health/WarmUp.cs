using System.Text.Json;
using Evenstep.Service.Catalogues;
using Evenstep.Service.Reading;
using Evenstep.Service.Recommendations;

namespace Evenstep.Service.Health;

/// <summary>Whether the service can answer.</summary>
internal sealed class Readiness
{
    public bool IsReady { get; private set; }

    public string Detail { get; private set; } = "The warm-up solve has not finished yet.";

    public void Succeed() => IsReady = true;

    public void Fail() => Detail = "The warm-up solve failed; the log says how.";
}

/// <summary>
/// Answers one small request at start, the whole walk from JSON to JSON: the first solve loads the solver, and a service
/// that cannot solve is not ready.
/// </summary>
internal sealed partial class WarmUp(Shelf shelf, RefereedPlanner planner, Readiness readiness, ILogger<WarmUp> logger) : BackgroundService
{
    /// <summary>Beside the assembly.</summary>
    private static readonly string ExamplePath = Path.Combine(AppContext.BaseDirectory, "openapi", "examples", "recommendation-own-catalogue.json");

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            await AnswerExampleAsync(stoppingToken);
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
    }

    private async Task AnswerExampleAsync(CancellationToken stopping)
    {
        var bytes = await File.ReadAllBytesAsync(ExamplePath, stopping);
        using var example = JsonDocument.Parse(bytes);
        var faults = new Faults();
        var asked = RecommendationReader.Read(example.RootElement, shelf, faults)
            ?? throw new InvalidDataException($"The warm-up example is faulty: {string.Join("; ", faults.Shown)}");
        var solved = await planner.SolveAsync(new PlanningCase(asked.Problem, asked.Catalogue, bytes), certify: true, stopping);
        RecommendationDesk.Finish(asked, solved);
    }

    [LoggerMessage(LogLevel.Information, "The warm-up solve has finished; the service is ready.")]
    private partial void LogReady();

    [LoggerMessage(LogLevel.Error, "The warm-up solve failed; the service is not ready.")]
    private partial void LogFailure(Exception exception);
}
