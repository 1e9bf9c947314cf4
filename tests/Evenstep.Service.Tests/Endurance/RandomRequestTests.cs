using Evenstep.Benchmarks.Trials;

namespace Evenstep.Service.Tests.Endurance;

/// <summary>A few random valid requests over every bound of the contract; the recorded run sends three thousand.</summary>
public sealed class RandomRequestTests
{
    private const int Requests = 40;
    private const double MostMegabytes = 1000;

    [Fact]
    public async Task Whatever_the_contract_allows_is_answered_within_bounds_of_memory()
    {
        using var service = await TrialService.StartAsync(Trial.Start());
        await MixedLoad.PrepareAsync(service);
        await using var watch = new MemoryWatch(service, MostMegabytes, TimeSpan.FromMilliseconds(50));
        foreach (var request in Enumerable.Range(1, Requests).Select(RequestDraw.Draw))
        {
            var outcome = await OutcomeAsync(service, request);

            Assert.True(outcome == "200", $"seed {request.Seed}, {request.Path}, {request.Summary}: {outcome}; at most {watch.Peak:F0} MB");
        }

        Assert.False(watch.HasKilled);
    }

    private static async Task<string> OutcomeAsync(TrialService service, DrawnRequest request)
    {
        try
        {
            var answer = await service.AskAsync(HttpMethod.Post, request.Path, request.Body, ("Accept", $"{request.Accept}, application/problem+json"));
            return answer.Status == 200 ? "200" : $"{answer.Status} {answer.Body[..Math.Min(500, answer.Body.Length)]}";
        }
        catch (Exception failure) when (failure is OperationCanceledException or HttpRequestException)
        {
            return failure is HttpRequestException ? "the connection broke off" : $"no answer in {Trial.Patience.TotalSeconds} s";
        }
    }

    [Fact]
    public void The_same_seed_draws_the_same_request() =>
        Assert.All(Enumerable.Range(1, 30), seed => Assert.Equal(RequestDraw.Draw(seed), RequestDraw.Draw(seed)));

    [Fact]
    public void Every_bound_is_reached()
    {
        var drawn = Enumerable.Range(1, 400).Select(RequestDraw.Draw).ToArray();

        string[] ends = ["3000 items", "4 telescopes", "100 owned", "8 purchases", "4 Barlows", "certify", "ifUnavailable"];
        Assert.All(ends, end => Assert.Contains(drawn, one => one.Summary.Contains(end, StringComparison.Ordinal)));
        Assert.Equal(5, drawn.Select(one => one.Path).Distinct().Count());
    }
}
