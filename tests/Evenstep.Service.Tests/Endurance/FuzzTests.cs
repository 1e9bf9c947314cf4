using Evenstep.Benchmarks.Trials;
using Evenstep.Benchmarks.Trials.Fuzz;
using Evenstep.Service.Tests.Judges;

namespace Evenstep.Service.Tests.Endurance;

/// <summary>Requests drawn from the committed document, valid and spoilt, against the service in a process of its own.</summary>
public sealed class FuzzTests
{
    private const int Requests = 10_000;
    private const int FirstSeed = 5_000_000;

    [JudgeFact("ajv")]
    public async Task Ten_thousand_drawn_requests_are_answered_as_the_document_says()
    {
        using var service = await TrialService.StartAsync(Trial.Start());
        using var validator = new Validator(Node.Folder, Repository.DocumentPath);
        var run = new FuzzRun(new ApiDocument(Repository.DocumentPath), new FuzzJudge(validator), service);

        var results = await run.RunAsync(FirstSeed, Requests, Trial.Patience, _ => { });

        Assert.Empty(results.Findings);
        Assert.Equal(Requests, results.Sent);
        Assert.InRange(results.Statuses[200], Requests / 5, Requests);
        Assert.InRange(results.Statuses[400], Requests / 5, Requests);
    }

    [JudgeFact("ajv")]
    public void The_same_seed_draws_the_same_request()
    {
        var (document, known) = (new ApiDocument(Repository.DocumentPath), new KnownIds(["demo", "shop"], ["a", "b"], ["c", "d"], ["e", "f"]));

        var twice = Enumerable.Range(1, 100).Select(
            seed => (new FuzzDraw(document, known, seed).Next().ToString(), new FuzzDraw(document, known, seed).Next().ToString()));

        Assert.All(twice, pair => Assert.Equal(pair.Item1, pair.Item2));
    }
}
