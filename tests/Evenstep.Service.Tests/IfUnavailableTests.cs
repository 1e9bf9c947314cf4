using System.Text.Json.Nodes;
using Evenstep.Planning.Tests.Oracle;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests;

/// <summary>What to buy if a purchase cannot be had.</summary>
public sealed class IfUnavailableTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/recommendations";
    private const int FirstSeed = 530_000;
    private const int Problems = 60;

    [Fact]
    public async Task It_is_null_unless_it_is_asked_for()
    {
        var answer = await service.PostAsync(Path, Repository.Example("recommendation-spectacles"));

        Assert.All(answer.As<Recommendation>().Purchases, purchase => Assert.Null(purchase.IfUnavailable));
    }

    [Fact]
    public async Task It_is_what_the_same_request_gets_that_excludes_the_item()
    {
        var compared = 0;
        foreach (var body in Bodies())
        {
            body["explain"]!["ifUnavailable"] = true;
            foreach (var purchase in (await service.PostAsync(Path, body.ToJsonString())).As<Recommendation>().Purchases)
            {
                var excluding = Excluding(body, purchase.ItemId);
                var answer = await service.PostAsync(Path, excluding.ToJsonString());

                Assert.Equal(Reading.Text(Expected(answer.As<Recommendation>())), Reading.Text(purchase.IfUnavailable!));
                compared++;
            }
        }

        Assert.True(compared > Problems, $"only {compared} compared");
    }

    [Fact]
    public async Task Asking_changes_nothing_else()
    {
        foreach (var body in Bodies())
        {
            var without = await service.PostAsync(Path, body.ToJsonString());
            body["explain"]!["ifUnavailable"] = true;
            var with = await service.PostAsync(Path, body.ToJsonString());

            Assert.Equal(WithoutAlternatives(without.Body), WithoutAlternatives(with.Body));
        }
    }

    private static IEnumerable<JsonObject> Bodies() => Enumerable.Range(FirstSeed, Problems).Select(seed => OracleBody.Of(RandomProblems.Make(seed)))
        .Prepend(JsonNode.Parse(Repository.Example("recommendation-spectacles"))!.AsObject());

    private static JsonNode Excluding(JsonObject body, string id)
    {
        var excluding = body.DeepClone();
        var excluded = excluding["preferences"]!["exclude"]?.AsArray() ?? [];
        excluding["preferences"]!["exclude"] = new JsonArray([.. excluded.Select(one => one!.DeepClone()), id]);
        excluding["explain"] = null;
        return excluding;
    }

    private static WithoutItem Expected(Recommendation answer) => new(
        answer.Outcome, answer.TotalPrice, [.. answer.Purchases.Select(one => one.ItemId).Order(StringComparer.Ordinal)],
        answer.After?.LargestStep, answer.After?.MeanMismatchPercent, answer.After?.ServedPercent);

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
