namespace Evenstep.Service.Tests.Answering.Metrics;

public sealed class MetricsTests
{
    [Fact]
    public async Task What_the_service_does_is_served_for_Prometheus()
    {
        await using var service = new WatchedService();
        var body = Repository.Example("recommendation-shortest");
        await service.RecommendAsync(body);
        await service.RecommendAsync(body);
        await service.RecommendAsync("{}");

        var metrics = await MetricsOfAsync(service);

        Assert.Matches(
            """http_server_request_duration_seconds_count\{[^}]*http_response_status_code="200",http_route="/v1/recommendations"[^}]*\} [1-9]""", metrics);
        Assert.Matches(
            """http_server_request_duration_seconds_count\{[^}]*http_response_status_code="400",http_route="/v1/recommendations"[^}]*\} [1-9]""", metrics);
        Assert.Matches("""evenstep_answers_total\{[^}]*outcome="optimal"[^}]*\} [1-9]""", metrics);
        Assert.Matches("""evenstep_solve_duration_seconds_bucket\{[^}]*le="0.0025"[^}]*\} \d""", metrics);
        Assert.Matches("""evenstep_cache_lookups_total\{[^}]*result="hit"[^}]*\} [1-9]""", metrics);
        Assert.Matches("""evenstep_cache_lookups_total\{[^}]*result="miss"[^}]*\} [1-9]""", metrics);
        Assert.Matches("""evenstep_gate_in_use\{[^}]*\} \d""", metrics);
        Assert.Matches("""evenstep_gate_waiting\{[^}]*\} \d""", metrics);
    }

    [Theory]
    [InlineData("evenstep_answers_total", "outcome", "optimal", "best-found", "nothing-worthwhile", "infeasible")]
    [InlineData("evenstep_cache_lookups_total", "result", "hit", "miss", "joined")]
    [InlineData("evenstep_certificates_total", "verdict", "agreed", "disagreed", "undecided", "dropped")]
    public async Task Every_count_is_shown_from_the_start(string name, string tag, params string[] values)
    {
        await using var service = new WatchedService();

        var metrics = await MetricsOfAsync(service);

        Assert.All(
            values,
            value => Assert.Contains(
                $"{tag}=\"{value}\"", string.Join('\n', metrics.Split('\n').Where(line => line.StartsWith(name, StringComparison.Ordinal))),
                StringComparison.Ordinal));
    }

    private static async Task<string> MetricsOfAsync(WatchedService service)
    {
        using var client = service.CreateClient();
        return await client.GetStringAsync(new Uri("/metrics", UriKind.Relative));
    }
}
