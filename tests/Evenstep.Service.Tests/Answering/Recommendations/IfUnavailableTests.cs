using System.Text.Json.Nodes;
using Evenstep.Planning.Tests.Oracle;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Answering.Recommendations;

/// <summary>What to buy if a purchase cannot be had.</summary>
public sealed class IfUnavailableTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/recommendations";
    private const int FirstSeed = 530_000;
    private const int ProblemsPerBatch = 20;

    public static TheoryData<int> Batches => [0, 1, 2];

    [Fact]
    public async Task It_is_null_unless_it_is_asked_for()
    {
        var answer = await service.PostAsync(Path, Repository.Example("recommendation-spectacles"));

        Assert.All(answer.As<Recommendation>().Purchases, purchase => Assert.Null(purchase.IfUnavailable));
    }

    [Theory]
    [MemberData(nameof(Batches))]
    public async Task It_is_what_the_same_request_gets_that_excludes_the_item(int batch)
    {
        var compared = 0;
        foreach (var (name, body) in Bodies(batch))
        {
            body["explain"]!["ifUnavailable"] = true;
            foreach (var purchase in (await service.PostAsync(Path, body.ToJsonString())).As<Recommendation>().Purchases)
            {
                var excluding = Excluding(body, purchase.ItemId);
                var answer = await service.PostAsync(Path, excluding.ToJsonString());

                var expected = answer.As<Recommendation>();
                Assert.Equal((name, Reading.Text(Compared(Expected(expected), expected))), (name, Reading.Text(Compared(purchase.IfUnavailable!, expected))));
                compared++;
            }
        }

        Assert.True(compared > ProblemsPerBatch, $"only {compared} compared");
    }

    [Theory]
    [MemberData(nameof(Batches))]
    public async Task Asking_changes_nothing_else(int batch)
    {
        foreach (var (name, body) in Bodies(batch))
        {
            var without = await service.PostAsync(Path, body.ToJsonString());
            body["explain"]!["ifUnavailable"] = true;
            var with = await service.PostAsync(Path, body.ToJsonString());

            Assert.Equal((name, WithoutAlternatives(without.Body)), (name, WithoutAlternatives(with.Body)));
        }
    }

    private static IEnumerable<(string Name, JsonObject Body)> Bodies(int batch) =>
        Enumerable.Range(FirstSeed + (batch * ProblemsPerBatch), ProblemsPerBatch).Select(seed => ($"seed {seed}", OracleBody.Of(RandomProblems.Make(seed))))
        .Prepend(("example", JsonNode.Parse(Repository.Example("recommendation-spectacles"))!.AsObject()));

    private static JsonNode Excluding(JsonObject body, string id)
    {
        var excluding = body.DeepClone();
        var excluded = excluding["preferences"]!["exclude"]?.AsArray() ?? [];
        excluding["preferences"]!["exclude"] = new JsonArray([.. excluded.Select(one => one!.DeepClone()), id]);
        excluding["explain"] = null;
        return excluding;
    }

    /// <summary>A telescope that nothing serves may stand aside in what explains, but not in what is after.</summary>
    private static WithoutItem Compared(WithoutItem one, Recommendation answer) => answer.Telescopes.All(telescope => telescope.After?.LargestStep is not null)
        ? one
        : one with { LargestStep = null, MeanMismatchPercent = null, ServedPercent = null, ComfortablePercent = null };

    private static WithoutItem Expected(Recommendation answer) => new(
        answer.Outcome, answer.TotalPrice, [.. answer.Purchases.Select(one => one.ItemId).Order(StringComparer.Ordinal)],
        answer.After?.LargestStep, answer.After?.MeanMismatchPercent, answer.After?.ServedPercent, answer.After?.ComfortablePercent);

    private static string WithoutAlternatives(string body)
    {
        var json = JsonNode.Parse(body)!;
        json["solver"]!["milliseconds"] = 0;
        foreach (var purchase in json["purchases"]!.AsArray())
        {
            purchase!["ifUnavailable"] = null;
        }

        return json.ToJsonString();
    }
}
