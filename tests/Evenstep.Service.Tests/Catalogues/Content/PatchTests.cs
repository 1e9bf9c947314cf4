using System.Text.Json;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Catalogues.Content;

/// <summary>Items of a stored catalogue are changed, one by one or many at once.</summary>
public sealed class PatchTests(Service service) : IClassFixture<Service>
{
    private const string Merge = "application/merge-patch+json";
    private const string Ndjson = "application/x-ndjson";

    /// <summary>Every test has a catalogue of its own.</summary>
    private readonly string path = $"/v1/catalogues/shop-{Guid.NewGuid():n}";

    [Fact]
    public async Task A_field_given_is_replaced_and_null_takes_it_away()
    {
        await PutAsync();
        await PatchAsync("e-25", """{ "name": "Twenty-five", "attributes": { "a": "1", "b": "2" }, "massGrams": 210 }""");

        var answer = await PatchAsync("e-25", """{ "price": 12.50, "name": null, "attributes": { "a": null, "c": "3" }, "inStock": false }""");

        Assert.Equal(200, answer.Status);
        Assert.Equal(
            """{"kind":"eyepiece","id":"e-25","focalLengthMm":25,"apparentFieldDeg":52,"eyeReliefMm":18,"barrel":"1.25in","massGrams":210,"price":12.50""" +
            ""","inStock":false,"attributes":{"b":"2","c":"3"}}""",
            await ItemAsync(0));
        Assert.Equal(answer.ETag, (await service.GetAsync(path)).ETag);
    }

    [Fact]
    public async Task All_the_rest_stays_as_it_is()
    {
        var before = await PutAsync();

        await PatchAsync("e-25", """{ "price": 1 }""");
        var after = await PatchAsync("e-25", """{ "price": 39.9 }""");

        Assert.Equal(before.ETag, after.ETag);
    }

    [Fact]
    public async Task A_change_of_nothing_is_no_change() => Assert.Equal((await PutAsync()).ETag, (await PatchAsync("e-25", "{}")).ETag);

    [Fact]
    public async Task The_kind_can_change_if_the_fields_do()
    {
        await PutAsync();

        var half = await PatchAsync("e-6", """{ "kind": "barlow" }""");
        var whole = await PatchAsync("e-6", """{ "kind": "barlow", "factors": [2], "focalLengthMm": null, "apparentFieldDeg": null, "eyeReliefMm": null }""");

        Assert.Equal(
            ["/apparentFieldDeg unknown-field", "/eyeReliefMm unknown-field", "/factors missing", "/focalLengthMm unknown-field"],
            half.Errors.Order(StringComparer.Ordinal));
        Assert.Equal(200, whole.Status);
    }

    [Theory]
    [InlineData("""{ "price": -1, "colour": "red", "barrel": null }""", "/barrel missing|/colour unknown-field|/price out-of-range")]
    [InlineData("""{ "pricee": null, "fieldStop": null, "price": 1 }""", "/fieldStop unknown-field|/pricee unknown-field")]
    [InlineData("""{ "id": "e-7" }""", "/id unchangeable")]
    [InlineData("""{ "id": null }""", "/id missing")]
    [InlineData("""{ "price": 1, "price": 2 }""", "/price duplicate")]
    [InlineData("""{ "attributes": { "a": 5 } }""", "/attributes/a wrong-type")]
    [InlineData("""{ "name": "\ud800" }""", "/name invalid-text")]
    [InlineData("null", " wrong-type")]
    [InlineData("[]", " wrong-type")]
    public async Task A_change_that_leaves_no_valid_item_is_refused(string patch, string errors)
    {
        var before = await PutAsync();

        var answer = await PatchAsync("e-25", patch);

        Assert.Equal(400, answer.Status);
        Assert.Equal(errors, string.Join('|', answer.Errors.Order(StringComparer.Ordinal)));
        Assert.Equal(before.ETag, (await service.GetAsync(path)).ETag);
    }

    [Fact]
    public async Task A_misspelt_field_that_is_to_be_taken_away_is_refused_with_the_nearest_name()
    {
        await PutAsync();

        var one = await PatchAsync("e-25", """{ "massGram": null }""");
        var feed = await FeedAsync("""{ "id": "e-25", "pricee": null }""");

        Assert.Contains("Did you mean `massGrams`?", one.Problem.Detail, StringComparison.Ordinal);
        Assert.Equal(["/line/1/pricee unknown-field"], feed.Errors);
        Assert.Contains("Did you mean `price`?", feed.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_does_not_exist_cannot_be_changed()
    {
        var noCatalogue = await PatchAsync("e-25", "{}");
        await PutAsync();
        var noItem = await PatchAsync("e-26", "{}");

        Assert.Equal((404, 404), (noCatalogue.Status, noItem.Status));
        Assert.Contains("Did you mean `e-25`?", noItem.Problem.Detail, StringComparison.Ordinal);
        Assert.Equal(409, (await service.SendAsync(HttpMethod.Patch, "/v1/catalogues/demo/items/ebbwick-8-3", "{}", Merge)).Status);
        Assert.Equal(409, (await service.SendAsync(HttpMethod.Patch, "/v1/catalogues/demo/items", """{ "id": "ebbwick-8-3" }""", Ndjson)).Status);
    }

    [Theory]
    [InlineData("a b/ü?%", "a%20b%2F%C3%BC%3F%25")]
    [InlineData("50%2F", "50%252F")]
    public async Task Any_id_can_be_named(string id, string inPath)
    {
        await service.SendAsync(HttpMethod.Put, path, Wares.Json(telescopes: "[]").Replace("e-25", id, StringComparison.Ordinal));

        Assert.Equal(200, (await PatchAsync(inPath, """{ "price": 3 }""")).Status);
        Assert.Equal(3, (await OfferAsync(0)).Price);
    }

    [Fact]
    public async Task Preconditions_are_kept()
    {
        var stored = await PutAsync();

        var stale = await PatchAsync("e-25", """{ "price": 1 }""", ("If-Match", "\"0123\""));
        var staleFeed = await FeedAsync("""{ "id": "e-25", "price": 1 }""", ("If-Match", "\"0123\""));
        var fresh = await PatchAsync("e-25", """{ "price": 1 }""", ("If-Match", stored.ETag!));
        var freshFeed = await FeedAsync("""{ "id": "e-25", "price": 2 }""", ("If-Match", fresh.ETag!));

        Assert.Equal((412, 412, 200, 200), (stale.Status, staleFeed.Status, fresh.Status, freshFeed.Status));
    }

    [Fact]
    public async Task Many_change_at_once()
    {
        await PutAsync();

        var answer =
            await FeedAsync("\uFEFF{ \"id\": \"e-6\", \"price\": 60.5 }\r\n\r\n{ \"id\": \"e-25\", \"inStock\": false, \"attributes\": { \"a\": \"1\" } }\n");

        Assert.Equal(200, answer.Status);
        Assert.Equal(60.5m, (await OfferAsync(1)).Price);
        Assert.False((await OfferAsync(0)).InStock);
    }

    [Fact]
    public async Task Every_faulty_line_is_named_and_then_nothing_changes()
    {
        var before = await PutAsync();

        var answer = await FeedAsync(
            """
            { "id": "e-25", "price": 10 }
            { "id": "e-6", "price": "60", "colour": 1 }

            { "id": "e-7", "price": 1 }
            { "price": 1 }
            { "id": "e-25", "price": 11 }
            not JSON
            [ "e-25" ]
            { "id": "e-25" } { "id": "e-6" }
            """);

        Assert.Equal(400, answer.Status);
        Assert.Equal(
            [
                "/line/2/colour unknown-field", "/line/2/price wrong-type", "/line/4/id unknown-item", "/line/5/id missing", "/line/6/id duplicate",
                "/line/7 not-json", "/line/8 wrong-type", "/line/9 not-json"
            ],
            answer.Errors.Order(StringComparer.Ordinal));
        Assert.Equal(before.ETag, (await service.GetAsync(path)).ETag);
    }

    [Fact]
    public async Task What_can_hardly_be_right_is_warned_of_where_it_stands()
    {
        await PutAsync();

        var feed = await FeedAsync("{ \"id\": \"e-6\", \"price\": 5 }\n{ \"id\": \"e-25\", \"price\": 0 }");

        Assert.Equal(200, feed.Status);
        Assert.Equal("/line/2/price", Assert.Single(feed.As<StoredSummary>().Warnings).Pointer);
    }

    [Theory]
    [InlineData("", "/line/1 missing")]
    [InlineData("\n \r\n", "/line/1 missing")]
    public async Task A_feed_of_nothing_is_refused(string body, string error)
    {
        await PutAsync();

        Assert.Equal([error], (await FeedAsync(body)).Errors);
    }

    [Fact]
    public async Task A_feed_longer_than_any_catalogue_is_refused()
    {
        await PutAsync();

        var answer = await FeedAsync(string.Concat(Enumerable.Repeat("{ \"id\": \"e-25\" }\n", 3001)));

        Assert.Equal(400, answer.Status);
        Assert.Equal(2900, answer.Problem.MoreErrors);
    }

    [Fact]
    public async Task The_whole_of_the_largest_catalogue_changes_at_once()
    {
        await service.SendAsync(HttpMethod.Put, path, Wares.Large(items: 3000, attributes: 1));

        var answer = await FeedAsync(string.Concat(Enumerable.Range(0, 3000).Select(i => $"{{ \"id\": \"e-{i}\", \"price\": 7 }}\n")));

        Assert.Equal(200, answer.Status);
        Assert.All((await service.GetAsync(path)).Items, item => Assert.Equal(7, OfferOf(item).Price));
    }

    /// <summary>Of two changes at once neither is lost, for each is worked out anew if the other comes first.</summary>
    [Fact]
    public async Task Changes_at_once_do_not_overwrite_each_other()
    {
        await service.SendAsync(HttpMethod.Put, path, Wares.Large(items: 40, attributes: 1));

        var answers = await Task.WhenAll(Enumerable.Range(0, 40).Select(i => PatchAsync($"e-{i}", """{ "price": 7 }""")));

        Assert.All(answers, answer => Assert.Equal(200, answer.Status));
        Assert.All((await service.GetAsync(path)).Items, item => Assert.Equal(7, OfferOf(item).Price));
    }

    [Theory]
    [InlineData("/items/e-25", "application/json", "application/merge-patch+json")]
    [InlineData("/items", "application/json", "application/x-ndjson")]
    public async Task Other_types_are_refused_with_those_that_are_taken(string at, string type, string taken)
    {
        var answer = await service.SendAsync(HttpMethod.Patch, path + at, "{}", type);

        Assert.Equal(415, answer.Status);
        Assert.Contains(taken, answer.Problem.Detail, StringComparison.Ordinal);
        Assert.Contains(taken, answer.AcceptPatch, StringComparison.Ordinal);
    }

    private Task<Answer> PutAsync() => service.SendAsync(HttpMethod.Put, path, Wares.Json());

    private Task<Answer> PatchAsync(string id, string patch, params (string Name, string Value)[] headers) =>
        service.SendAsync(HttpMethod.Patch, $"{path}/items/{id}", patch, Merge, headers);

    private Task<Answer> FeedAsync(string lines, params (string Name, string Value)[] headers) =>
        service.SendAsync(HttpMethod.Patch, $"{path}/items", lines, Ndjson, headers);

    private async Task<string> ItemAsync(int number) => (await service.GetAsync(path)).Items[number].GetRawText();

    private async Task<Offer> OfferAsync(int number) => OfferOf((await service.GetAsync(path)).Items[number]);

    private static Offer OfferOf(JsonElement item) => JsonSerializer.Deserialize<Offer>(item, JsonSerializerOptions.Web)!;

    /// <summary>What a shop changes from day to day.</summary>
    private sealed record Offer(decimal Price, bool InStock = true);
}
