using OpenTelemetry.Metrics;

namespace Evenstep.Service.Answering.Metrics;

/// <summary>The metrics for Prometheus: our own, and those of the requests.</summary>
internal static class MetricsSetup
{
    private const string Path = "/metrics";

    /// <summary>The web framework's own meter: every request with its route, status and duration.</summary>
    private const string Requests = "Microsoft.AspNetCore.Hosting";

    public static void AddServiceMetrics(this IServiceCollection services)
    {
        services.AddSingleton<ServiceMeter>();
        services.AddOpenTelemetry().WithMetrics(metrics => metrics
            .AddMeter(ServiceMeter.Name, Requests)
            .AddPrometheusExporter());
    }

    public static void MapServiceMetrics(this IEndpointRouteBuilder routes) => routes
        .MapPrometheusScrapingEndpoint(Path)
        .WithMetadata(new HttpMethodMetadata([HttpMethods.Get, HttpMethods.Head]))
        .DisableHttpMetrics();
}
