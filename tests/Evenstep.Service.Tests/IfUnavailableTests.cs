using System.Text.Json;
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

        Assert.All(PurchasesOf(answer.Json), purchase => Assert.Equal(JsonValueKind.Null, purchase.GetProperty("ifUnavailable").ValueKind));
    }

    [Fact]
    public async Task It_is_what_the_same_request_gets_that_excludes_the_item()
    {
        var compared = 0;
        foreach (var body in Bodies())
        {
            body["explain"]!["ifUnavailable"] = true;
            foreach (var purchase in PurchasesOf((await service.PostAsync(Path, body.ToJsonString())).Json))
            {
                var excluding = Excluding(body, purchase.GetProperty("itemId").GetString()!);
                var answer = await service.PostAsync(Path, excluding.ToJsonString());

                Assert.Equal(Expected(answer.Json), purchase.GetProperty("ifUnavailable").GetRawText());
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

    private static JsonElement.ArrayEnumerator PurchasesOf(JsonElement answer) => answer.GetProperty("purchases").EnumerateArray();

    private static JsonNode Excluding(JsonObject body, string id)
    {
        var excluding = body.DeepClone();
        var excluded = excluding["preferences"]!["exclude"]?.AsArray() ?? [];
        excluding["preferences"]!["exclude"] = new JsonArray([.. excluded.Select(one => one!.DeepClone()), id]);
        excluding["explain"] = null;
        return excluding;
    }

    private static string Expected(JsonElement answer)
    {
        var after = JsonNode.Parse(answer.GetProperty("after").GetRawText());
        return new JsonObject
        {
            ["outcome"] = answer.GetProperty("outcome").GetString(),
            ["totalPrice"] = JsonNode.Parse(answer.GetProperty("totalPrice").GetRawText()),
            ["itemIds"] = new JsonArray([.. PurchasesOf(answer).Select(one => one.GetProperty("itemId").GetString()).Order(StringComparer.Ordinal)]),
            ["largestStep"] = after?["largestStep"]?.DeepClone(),
            ["meanMismatchPercent"] = after?["meanMismatchPercent"]?.DeepClone(),
            ["servedPercent"] = after?["servedPercent"]?.DeepClone(),
        }.ToJsonString();
    }

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
