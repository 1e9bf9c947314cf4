using Evenstep.Service.Answering.Health;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Health;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.Features.Health;

/// <summary>How the service is.</summary>
internal sealed record HealthAnswer
{
    /// <summary>`live` or `ready`.</summary>
    public required string Status { get; init; }
}

/// <summary>Tells whoever runs the service how it is.</summary>
internal static class HealthRoutes
{
    public static void AddHealth(this IServiceCollection services)
    {
        services.AddSingleton<Readiness>();
        services.AddSingleton<SelfRequest>();
        services.AddSingleton<WarmUpRequests>();
        services.AddHostedService<WarmUp>();
    }

    public static void MapHealth(this IEndpointRouteBuilder routes)
    {
        var health = routes.MapGroup("/health").WithTags("Health");
        health.MapGet("/live", Live).WithName("live");
        health.MapGet("/ready", Ready).WithName("ready")
            .Produces<HealthAnswer>()
            .Refuses(ProblemKind.NotReady);
    }

    /// <summary>Whether the process runs.</summary>
    /// <response code="200">It does.</response>
    public static Ok<HealthAnswer> Live() => TypedResults.Ok(new HealthAnswer { Status = "live" });

    /// <summary>Whether the service can answer: it has answered requests of its own since it started.</summary>
    /// <response code="200">It can.</response>
    /// <response code="503">Not yet, or not at all; the detail says which.</response>
    public static IResult Ready(Readiness readiness) => readiness.IsReady
        ? TypedResults.Ok(new HealthAnswer { Status = "ready" })
        : new ProblemResult(ProblemKind.NotReady, readiness.Detail);
}
