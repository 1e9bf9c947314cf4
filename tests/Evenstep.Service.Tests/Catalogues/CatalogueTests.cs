using Evenstep.Service.Answering.Health;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Tests.Answering.Metrics;
using Evenstep.Service.Tests.Answers;
using Microsoft.Extensions.DependencyInjection;

namespace Evenstep.Service.Tests.Catalogues;

/// <summary>Catalogues are stored, read, listed and deleted over HTTP.</summary>
public sealed class CatalogueTests(Service service) : IClassFixture<Service>
{
    /// <summary>Every test has a catalogue of its own.</summary>
    private readonly string id = $"shop-{Guid.NewGuid():n}";

    private string Path => $"/v1/catalogues/{id}";

    private string Recommendation => $$"""{ "telescopes": [ { "id": "reef-150" } ], "catalogue": { "id": "{{id}}" }, "limits": { "budget": 100 } }""";

    [Fact]
    public async Task A_new_one_is_created_and_an_equal_one_changes_nothing()
    {
        var created = await PutAsync(Wares.Json());
        var same = await PutAsync(Wares.Json().Replace("  ", " ", StringComparison.Ordinal));
        var changed = await PutAsync(Wares.Json(price: 41));

        Assert.Equal((201, Path, $"\"{Wares.Catalogue().Version}\""), (created.Status, created.Location, created.ETag));
        Assert.Equal((200, created.ETag), (same.Status, same.ETag));
        Assert.Equal((200, $"\"{Wares.Catalogue(41).Version}\""), (changed.Status, changed.ETag));
        var told = created.As<StoredSummary>();
        Assert.Equal((id, created.ETag), (told.Id, $"\"{told.Version}\""));
        Assert.Equal(("EUR", 2, 1), (told.Currency, told.ItemCount, told.TelescopeCount));
    }

    [Fact]
    public async Task A_catalogue_is_sent_unless_the_caller_has_that_version()
    {
        var stored = await PutAsync(Wares.Json());

        var found = await service.GetAsync(Path);
        var known = await service.SendAsync(HttpMethod.Get, Path, headers: ("If-None-Match", $"\"x\", W/{stored.ETag}"));
        var other = await service.SendAsync(HttpMethod.Get, Path, headers: ("If-None-Match", "\"x\""));

        Assert.Equal((200, "application/json", stored.ETag), (found.Status, found.ContentType, found.ETag));
        Assert.Equal(System.Text.Encoding.UTF8.GetString(Wares.Catalogue().Content.Span), found.Body);
        Assert.Equal((304, "", stored.ETag), (known.Status, known.Body, known.ETag));
        Assert.Equal((200, found.Body), (other.Status, other.Body));
    }

    [Fact]
    public async Task A_stored_catalogue_is_there_after_a_restart()
    {
        using var data = new DataFolder();
        await using (var first = new Service(data))
        {
            Assert.Equal(201, (await first.SendAsync(HttpMethod.Put, Path, Wares.Json())).Status);
        }

        await using var second = new Service(data);
        await Eventually.TrueAsync(() => second.Services.GetRequiredService<Readiness>().IsReady);
        Assert.Equal($"\"{Wares.Catalogue().Version}\"", (await second.SendAsync(HttpMethod.Get, Path)).ETag);
    }

    [Fact]
    public async Task Preconditions_are_kept()
    {
        var missing = await PutAsync(Wares.Json(), ("If-Match", "*"));
        var created = await PutAsync(Wares.Json(), ("If-None-Match", "*"));
        var again = await PutAsync(Wares.Json(2), ("If-None-Match", "*"));
        var stale = await PutAsync(Wares.Json(2), ("If-Match", "\"0123\""));
        var weak = await PutAsync(Wares.Json(2), ("If-Match", $"W/{created.ETag}"));
        var replaced = await PutAsync(Wares.Json(2), ("If-Match", $"\"0123\", {created.ETag}"));
        var any = await PutAsync(Wares.Json(3), ("If-Match", "*"));

        Assert.Equal(
            (412, 201, 412, 412, 412, 200, 200), (missing.Status, created.Status, again.Status, stale.Status, weak.Status, replaced.Status, any.Status));
        Assert.Equal("/problems/precondition-failed", stale.Problem.Type);
        Assert.Contains(Wares.Catalogue().Version!, stale.Problem.Detail, StringComparison.Ordinal);
        Assert.Equal(412, (await service.SendAsync(HttpMethod.Delete, Path, headers: ("If-Match", created.ETag!))).Status);
        Assert.Equal(204, (await service.SendAsync(HttpMethod.Delete, Path, headers: ("If-Match", any.ETag!))).Status);
    }

    [Theory]
    [InlineData("If-Match", "0123")]
    [InlineData("If-None-Match", "\"a\" \"b\"")]
    public async Task A_precondition_that_cannot_be_read_is_refused(string name, string value)
    {
        var answer = await PutAsync(Wares.Json(), (name, value));

        Assert.Equal((400, "/problems/invalid-request"), (answer.Status, answer.Problem.Type));
        Assert.Contains(name, answer.Problem.Detail, StringComparison.Ordinal);
        Assert.Equal(404, (await service.GetAsync(Path)).Status);
    }

    [Fact]
    public async Task What_is_deleted_is_not_found()
    {
        await PutAsync(Wares.Json());

        Assert.Equal(204, (await service.SendAsync(HttpMethod.Delete, Path)).Status);

        var gone = await service.GetAsync(Path);
        Assert.Equal((404, "/problems/not-found"), (gone.Status, gone.Problem.Type));
        Assert.Contains("`demo`", gone.Problem.Detail, StringComparison.Ordinal);
        Assert.Equal(404, (await service.SendAsync(HttpMethod.Delete, Path)).Status);
        Assert.Equal(404, (await service.PostAsync("/v1/recommendations", Recommendation)).Status);
    }

    [Fact]
    public async Task The_demo_catalogue_can_be_read_but_not_changed()
    {
        var demo = await service.GetAsync("/v1/catalogues/demo");
        var put = await service.SendAsync(HttpMethod.Put, "/v1/catalogues/demo", Wares.Json());
        var deleted = await service.SendAsync(HttpMethod.Delete, "/v1/catalogues/demo");

        Assert.Equal(200, demo.Status);
        Assert.Equal((409, 409), (put.Status, deleted.Status));
        Assert.Equal("/problems/read-only", put.Problem.Type);
        Assert.Equal(demo.Body, (await service.GetAsync("/v1/catalogues/demo")).Body);
        Assert.Equal(201, (await service.SendAsync(HttpMethod.Put, "/v1/catalogues/copy", demo.Body)).Status);
        Assert.Equal(demo.ETag, (await service.GetAsync("/v1/catalogues/copy")).ETag);
    }

    [Theory]
    [InlineData("a", 201)]
    [InlineData("0-a", 201)]
    [InlineData("a23456789012345678901234567890123456789012345678901234567890123", 201)]
    [InlineData("a234567890123456789012345678901234567890123456789012345678901234", 400)]
    [InlineData("-a", 400)]
    [InlineData("Shop", 400)]
    [InlineData("a_b", 400)]
    [InlineData("a%0A", 400)]
    public async Task An_id_is_of_lower_case_letters_digits_and_hyphens(string given, int status)
    {
        var answer = await service.SendAsync(HttpMethod.Put, $"/v1/catalogues/{given}", Wares.Json());

        Assert.True(status == answer.Status, answer.Body);
        Assert.Equal(status == 201 ? 200 : 404, (await service.GetAsync($"/v1/catalogues/{given}")).Status);
    }

    [Fact]
    public async Task A_faulty_one_is_refused_with_every_fault_and_nothing_is_stored()
    {
        var answer = await PutAsync(
            """
            { "currency": "euro", "colour": 1, "items": [
                { "id": "a", "kind": "barlow", "factors": [9], "barrel": "2in" },
                { "id": "a", "kind": "barlow", "factors": [2], "barrel": "2in", "price": 1 } ],
              "telescopes": [
                { "id": "t", "apertureMm": 150, "focalLengthMm": 750, "focuserBarrel": "2in", "included": [ "b", "a", "a", 7 ] },
                { "id": "t", "apertureMm": 150, "focalLengthMm": 750, "focuserBarrel": "3in",
                  "included": [ { "kind": "barlow", "id": "a", "factors": [2], "barrel": "2in" } ] } ] }
            """);

        Assert.Equal(400, answer.Status);
        Assert.Equal(
            [
                "/colour unknown-field", "/currency too-long", "/items/0/factors/0 out-of-range", "/items/0/price missing", "/items/1/id duplicate",
                "/telescopes/0/included/0 unknown-item", "/telescopes/0/included/2 duplicate", "/telescopes/0/included/3 wrong-type",
                "/telescopes/1/focuserBarrel not-one-of", "/telescopes/1/included/0/id duplicate",
            ],
            answer.Errors.Order(StringComparer.Ordinal));
        Assert.Equal(404, (await service.GetAsync(Path)).Status);
    }

    [Theory]
    [InlineData(
        """[ { "id": "t", "apertureMm": 150, "focalLengthMm": 750, "focuserBarrel": "2in" },""" +
        """ { "id": "t", "apertureMm": 90, "focalLengthMm": 750, "focuserBarrel": "2in" } ]""", "/telescopes/1/id duplicate")]
    [InlineData(
        """[ { "id": "t", "apertureMm": 150, "focalLengthMm": 750, "focuserBarrel": "2in",""" +
        """ "included": [ { "kind": "barlow", "id": "p", "factors": [2], "barrel": "2in" } ] },""" +
        """ { "id": "u", "apertureMm": 150, "focalLengthMm": 750, "focuserBarrel": "2in",""" +
        """ "included": [ { "kind": "barlow", "id": "p", "factors": [3], "barrel": "2in" } ] } ]""", "/telescopes/1/included/0/id duplicate")]
    [InlineData(
        """[ { "id": "t", "apertureMm": 150, "focalLengthMm": 750, "focuserBarrel": "2in", "included": [""" +
        """ { "kind": "barlow", "factors": [2], "barrel": "2in" } ] } ]""", "/telescopes/0/included/0/id missing")]
    public async Task Telescopes_and_what_is_packed_with_them_are_told_apart_by_their_ids(string telescopes, string error) =>
        Assert.Equal([error], (await PutAsync(Wares.Json(telescopes: telescopes))).Errors);

    [Fact]
    public async Task Several_telescopes_may_be_packed_with_the_same_item() => Assert.Equal(201, (await PutAsync(Wares.Json(telescopes:
        """
        [ { "id": "t", "apertureMm": 150, "focalLengthMm": 750, "focuserBarrel": "2in", "included": [
              "e-25", { "kind": "barlow", "id": "p", "factors": [2], "barrel": "2in" } ] },
          { "id": "u", "apertureMm": 150, "focalLengthMm": 750, "focuserBarrel": "2in", "included": [
              { "kind": "barlow", "id": "p", "factors": [2], "barrel": "2in" }, "e-25" ] } ]
        """))).Status);

    [Fact]
    public async Task Its_telescopes_are_named_by_id_and_what_is_packed_with_them_is_owned()
    {
        await PutAsync(Wares.Json(telescopes:
            """[ { "id": "reef-150", "apertureMm": 150, "focalLengthMm": 750, "focuserBarrel": "2in", "included": [""" +
            """ "e-25", { "kind": "barlow", "id": "packed-2x", "factors": [2], "barrel": "1.25in" } ] } ]"""));

        var with = await service.PostAsync("/v1/recommendations", Recommendation);
        var without = await service.PostAsync(
            "/v1/recommendations", Recommendation.Replace("\"id\": \"reef-150\"", "\"id\": \"reef-150\", \"withIncluded\": false", StringComparison.Ordinal));
        var oneOwned = await service.PostAsync(
            "/v1/assessments",
            """{ "telescopes": [ { "id": "reef-150", "withIncluded": false } ], "owned": [ { "id": "packed-2x" }, { "id": "e-6" } ],""" +
            $$""" "catalogue": { "id": "{{id}}" } }""");
        var clash = await service.PostAsync(
            "/v1/assessments",
            """{ "telescopes": [ { "id": "reef-150" } ], "owned": [ { "id": "packed-2x", "kind": "barlow", "factors": [3], "barrel": "2in" } ],""" +
            $$""" "catalogue": { "id": "{{id}}" } }""");

        Assert.Equal(["e-25", "e-25+packed-2x"], NamesOf(with.As<Recommendation>().Telescopes[0].Before));
        Assert.Empty(NamesOf(without.As<Recommendation>().Telescopes[0].Before));
        Assert.Equal(["e-6", "e-6+packed-2x"], NamesOf(oneOwned.As<Assessment>().Telescopes[0].Ladder));
        Assert.Equal(["/owned/0/id duplicate"], clash.Errors);
    }

    [Fact]
    public async Task A_change_is_seen_by_the_next_request()
    {
        await PutAsync(Wares.Json(39));
        var dear = await service.PostAsync("/v1/recommendations", Recommendation);
        await PutAsync(Wares.Json(12));
        var cheap = await service.PostAsync("/v1/recommendations", Recommendation);

        Assert.Equal(Wares.Catalogue(39).Version, dear.As<Recommendation>().Catalogue.Version);
        Assert.Equal(Wares.Catalogue(12).Version, cheap.As<Recommendation>().Catalogue.Version);
    }

    [Fact]
    public async Task They_are_listed_by_id_a_page_at_a_time()
    {
        await using var own = new Service();
        foreach (var one in (string[])["c", "a", "e", "b"])
        {
            await own.SendAsync(HttpMethod.Put, $"/v1/catalogues/{one}", Wares.Json());
        }

        List<string[]> pages = [];
        for (string? cursor = ""; cursor is not null;)
        {
            var page = (await own.GetAsync($"/v1/catalogues?limit=2{cursor}")).As<CatalogueList>();
            pages.Add([.. page.Catalogues.Select(one => one.Id)]);
            cursor = page.NextCursor is { } next ? $"&cursor={next}" : null;

            // What goes meanwhile shifts nothing.
            await own.SendAsync(HttpMethod.Delete, "/v1/catalogues/a");
        }

        Assert.Equal([["a", "b"], ["c", CatalogueSnapshot.DemoId], ["e"]], pages);
        Assert.Equal(4, (await own.GetAsync("/v1/catalogues")).As<CatalogueList>().Catalogues.Count);
    }

    [Theory]
    [InlineData("limit=0", "limit out-of-range")]
    [InlineData("limit=101", "limit out-of-range")]
    [InlineData("limit=1.5", "limit out-of-range")]
    [InlineData("limit=", "limit wrong-type")]
    [InlineData("limit=1&limit=2", "limit duplicate")]
    [InlineData("cursor=!", "cursor invalid-text")]
    [InlineData("cursor=QUJD", "cursor invalid-text")]
    [InlineData("offset=3&limit=x", "limit wrong-type|offset unknown-field")]
    public async Task A_page_that_cannot_be_understood_is_refused(string query, string errors)
    {
        var answer = await service.GetAsync($"/v1/catalogues?{query}");

        Assert.Equal(400, answer.Status);
        Assert.Equal(errors, string.Join('|', answer.Errors.Order(StringComparer.Ordinal)));
    }

    [Theory]
    [InlineData("text/plain", 415)]
    [InlineData("application/json; charset=latin1", 415)]
    public async Task Other_types_are_not_taken(string type, int status) =>
        Assert.Equal(status, (await service.SendAsync(HttpMethod.Put, Path, Wares.Json(), type)).Status);

    [Theory]
    [InlineData("GET", "/v1/catalogues")]
    [InlineData("GET", "/v1/catalogues/demo")]
    [InlineData("PUT", "/v1/catalogues/shop")]
    public async Task A_request_that_does_not_accept_JSON_is_refused(string method, string path) =>
        Assert.Equal(
            406, (await service.SendAsync(new HttpMethod(method), path, method == "PUT" ? Wares.Json() : null, headers: ("Accept", "image/png"))).Status);

    [Fact]
    public async Task The_most_items_with_long_texts_are_taken_and_no_more()
    {
        var most = await PutAsync(Wares.Large(items: 3000, attributes: 24));
        var tooLarge = await PutAsync(Wares.Large(items: 3000, attributes: 30));
        var tooMany = await PutAsync(Wares.Large(items: 3001, attributes: 0));

        Assert.Equal((201, 413, 400), (most.Status, tooLarge.Status, tooMany.Status));
        Assert.Contains("32 MiB", tooLarge.Problem.Detail, StringComparison.Ordinal);
        Assert.Equal(["/items too-many"], tooMany.Errors);
        Assert.Equal(3000, (await service.GetAsync(Path)).Items.Length);
    }

    private Task<Answer> PutAsync(string body, params (string Name, string Value)[] headers) => service.SendAsync(HttpMethod.Put, Path, body, headers: headers);

    private static string[] NamesOf(Ladder ladder) =>
        [.. ladder.Views.Select(view => view.BarlowId is { } barlow ? $"{view.EyepieceId}+{barlow}" : view.EyepieceId)];
}
