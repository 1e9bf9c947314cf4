using Evenstep.Service.Tests.Catalogues;

namespace Evenstep.Service.Tests.Judges;

/// <summary>The service and its committed document agree on what catalogues are valid, and answers about them keep to it.</summary>
public sealed class CatalogueJudgeTests(Service service, SchemaJudge judge) : IClassFixture<Service>, IClassFixture<SchemaJudge>
{
    private const string Described = "/v1/catalogues/{id}";
    private const string Path = "/v1/catalogues/judged";
    private const int Mutations = 1000;
    private const int Seed = 400_000;

    private static readonly string[] Good = [Wares.Json(), .. Repository.Examples("catalogue").Select(Repository.Example)];

    [JudgeFact]
    public void Mutated_catalogues_are_judged_alike()
    {
        var mutator = new Mutator(Good, Seed);
        string[] bodies = [.. Good, .. Enumerable.Range(0, Mutations).Select(i => mutator.Next(Good[i % Good.Length]))];

        Assert.DoesNotContain(bodies, text => ReaderVerdict.Of(Described, text).SchemaMustTakeIt != judge.OfRequest(Described, text, "put").Valid);
        Assert.InRange(bodies.Count(text => ReaderVerdict.Of(Described, text).IsTaken), Mutations / 5, Mutations * 4 / 5);
    }

    [JudgeFact]
    public async Task Answers_and_refusals_keep_to_the_document()
    {
        await KeepsAsync(HttpMethod.Put, Path, Described, 201, Good[0]);
        await KeepsAsync(HttpMethod.Put, Path, Described, 200, Good[1]);
        await KeepsAsync(HttpMethod.Get, Path, Described, 200);
        await KeepsAsync(HttpMethod.Get, "/v1/catalogues/demo", Described, 200);
        await KeepsAsync(HttpMethod.Get, "/v1/catalogues", "/v1/catalogues", 200);
        await KeepsAsync(HttpMethod.Get, "/v1/catalogues?limit=0", "/v1/catalogues", 400);
        await KeepsAsync(HttpMethod.Get, "/v1/catalogues/none", Described, 404);
        await KeepsAsync(HttpMethod.Put, Path, Described, 400, "{}");
        await KeepsAsync(HttpMethod.Put, Path, Described, 412, Good[0], headers: ("If-None-Match", "*"));
        await KeepsAsync(HttpMethod.Put, "/v1/catalogues/demo", Described, 409, Good[0]);
        foreach (var (price, status) in new[] { ("70", 200), ("\"70\"", 400) })
        {
            await KeepsAsync(
                HttpMethod.Patch, $"{Path}/items/gullwing-15", $"{Described}/items/{{itemId}}", status, $$"""{ "price": {{price}} }""",
                "application/merge-patch+json");
        }

        await KeepsAsync(HttpMethod.Patch, $"{Path}/items", $"{Described}/items", 200, """{ "id": "gullwing-15", "price": 71 }""", "application/x-ndjson");
        await KeepsAsync(HttpMethod.Patch, $"{Path}/items", $"{Described}/items", 400, "{", "application/x-ndjson");
        await KeepsAsync(HttpMethod.Delete, "/v1/catalogues/demo", Described, 409);
        await KeepsAsync(HttpMethod.Delete, "/v1/catalogues/none", Described, 404);
    }

    private async Task KeepsAsync(
        HttpMethod method, string path, string described, int status, string? body = null, string type = "application/json",
        params (string Name, string Value)[] headers)
    {
        var answer = await service.SendAsync(method, path, body, type, headers);

        Assert.True(status == answer.Status, answer.Body);
        Assert.Equal("", judge.OfAnswer(described, status, answer.Body, method.Method.ToLowerInvariant()).Errors);
    }
}
