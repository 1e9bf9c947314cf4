using System.Text.Json.Nodes;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Features.ProductPages;

/// <summary>A telescope's page gets the recommendation that its query asks for.</summary>
public sealed class TelescopePageTests(Service service) : IClassFixture<Service>
{
    private const string Telescopes = "/v1/catalogues/demo/telescopes";

    /// <summary>Each parameter with what it says in a body.</summary>
    public static TheoryData<string, string, string> Parameters => new()
    {
        { "capstan-152", "budget=150", "{}" },
        { "capstan-152", "budget=150.50&maxPurchases=1", """{ "limits": { "budget": 150.50, "maxPurchases": 1 } }""" },
        { "jetty-112", "budget=150&owned=kelpstone-5-5&owned=stayrope-2x", """{ "owned": [ { "id": "kelpstone-5-5" }, { "id": "stayrope-2x" } ] }""" },
        { "jetty-112", "budget=150&age=70", """{ "observer": { "age": 70 } }""" },
        { "jetty-112", "budget=150&wearsSpectacles=true", """{ "observer": { "wearsSpectacles": true } }""" },
        { "jetty-112", "budget=150&leastEyeReliefMm=14.5", """{ "observer": { "leastEyeReliefMm": 14.5 } }""" },
        { "breakwater-203", "budget=150&observes=large-nebulae&observes=moon", """{ "observer": { "observes": [ "large-nebulae", "moon" ] } }""" },
        { "breakwater-203", "budget=150&seeingArcsec=3", """{ "site": { "seeingArcsec": 3 } }""" },
        { "breakwater-203", "budget=300&prefer=wide-field", """{ "limits": { "budget": 300 }, "preferences": { "prefer": "wide-field" } }""" },
        { "breakwater-203", "budget=150&barlows=avoid&zooms=allow", """{ "preferences": { "barlows": "avoid", "zooms": "allow" } }""" },
        { "breakwater-203", "budget=150&enoughStep=1.2", """{ "preferences": { "enoughStep": 1.2 } }""" },
        { "breakwater-203", "budget=150&age=&observes=", "{}" },
    };

    [Theory]
    [MemberData(nameof(Parameters))]
    public async Task A_page_gets_the_answer_of_the_body_that_its_query_amounts_to(string telescope, string query, string rest)
    {
        var body = JsonNode.Parse(rest)!.AsObject();
        body["telescopes"] = new JsonArray(new JsonObject { ["id"] = telescope });
        body["catalogue"] = new JsonObject { ["id"] = "demo" };
        body["limits"] ??= new JsonObject { ["budget"] = 150 };
        var posted = await service.PostAsync("/v1/recommendations", body.ToJsonString());

        var page = await PageAsync($"{telescope}/recommendation?{query}");

        Assert.Equal(200, page.Status);
        Assert.Equal(WithoutTimes(posted), page.Body);
    }

    [Fact]
    public async Task No_query_changes_nothing_but_what_it_says()
    {
        var pages = await Task.WhenAll(Parameters.Select(row => PageAsync($"breakwater-203/recommendation?{row[1]}")));

        // Every parameter decides something: all but the last, which says nothing new, are told apart.
        Assert.Equal(pages.Length - 1, pages.Select(page => page.Body).Distinct().Count());
    }

    [Theory]
    [InlineData("cabin-boy-60", "")]
    [InlineData("driftwood-70", "zooms=allow")]
    [InlineData("breakwater-203", "age=60&maxPurchases=2")]
    [InlineData("lightship-279", "wearsSpectacles=true&owned=stayrope-2x")]
    public async Task Without_a_budget_there_is_no_limit(string telescope, string query)
    {
        var page = await RecommendationAsync($"{telescope}/recommendation?{query}");
        var rich = await RecommendationAsync($"{telescope}/recommendation?{query}&budget=1000000");

        Assert.Equal("optimal", page.Outcome);
        Assert.NotEmpty(page.Purchases);
        Assert.Equal(AdviceOf(rich), AdviceOf(page));
    }

    [Fact]
    public async Task What_is_owned_and_not_of_the_catalogue_is_left_aside_and_named()
    {
        var page = await RecommendationAsync("breakwater-203/recommendation?budget=150&owned=a-tripod&owned=kelpstone-5-5&owned=a-tripod&owned=a-chair");
        var without = await RecommendationAsync("breakwater-203/recommendation?budget=150&owned=kelpstone-5-5");
        var match = await PageAsync("../items/kelpstone-5-5/match?telescope=capstan-152&owned=a-tripod");

        var note = Assert.Single(page.Notes, note => note.Code == "owned-ignored");
        Assert.Equal("Not of this catalogue, and therefore left aside: a-tripod and a-chair.", note.Text);
        Assert.Equal(AdviceOf(without), AdviceOf(page));
        Assert.Single(match.As<ItemMatch>().Notes, note => note.Code == "owned-ignored");
    }

    [Fact]
    public async Task Of_a_list_of_owned_that_is_too_long_only_that_is_said()
    {
        var query = string.Join('&', Enumerable.Range(0, 150).Select(i => $"owned=tripod-{i}"));

        var refused = await PageAsync($"capstan-152/recommendation?{query}");

        Assert.Equal("too-many", Assert.Single(refused.Json.GetProperty("errors").EnumerateObject()).Value[0].GetProperty("code").GetString());
    }

    [Fact]
    public async Task A_page_that_says_nothing_is_worthwhile_does_so_of_the_best_set()
    {
        const string query = "owned=kelpstone-5-5&owned=kelpstone-12-9&maxPurchases=0";

        var page = await RecommendationAsync($"breakwater-203/recommendation?{query}");

        Assert.Equal("nothing-worthwhile", page.Outcome);
        Assert.Equal("nothing-worthwhile", (await RecommendationAsync($"breakwater-203/recommendation?{query}&budget=1000000")).Outcome);
        Assert.DoesNotContain("budget", Reading.Text(page.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_budget_is_spoken_of_where_none_is_named()
    {
        var queries = Parameters.Select(row => string.Join('&', $"{row[1]}".Split('&').Where(part => !part.StartsWith("budget=", StringComparison.Ordinal))));
        var pages = await Task.WhenAll(queries.Select(query => RecommendationAsync($"capstan-152/recommendation?{query}")));

        Assert.All(pages, page => Assert.DoesNotContain("budget", Reading.Text(page.Notes), StringComparison.Ordinal));
    }

    private static string AdviceOf(Recommendation page) => Reading.Text((object[])[page.TotalPrice!, page.Purchases, page.After!, page.Excluded, page.Solver]);

    [Fact]
    public async Task All_that_is_wrong_with_a_query_is_named_at_once_by_parameter()
    {
        var page = await PageAsync(
            "capstan-152/recommendation?budgte=1&budget=-1&age=old&age=older&observes=moons&observes=moon&owned=%09&seeingArcsec="
            + "&maxPurchases=1.5&wearsSpectacles=yes&zooms=maybe");

        Assert.Equal(400, page.Status);
        Assert.Equal("application/problem+json", (await service.GetAsync($"{Telescopes}/capstan-152/recommendation?x=1")).ContentType);
        Assert.Equal(
            [
                "age duplicate", "budget out-of-range", "budgte unknown-field", "maxPurchases out-of-range", "observes not-one-of", "owned invalid-text",
                "wearsSpectacles wrong-type", "zooms not-one-of",
            ],
            page.As<ProblemDetails>().Codes().Order(StringComparer.Ordinal));
        Assert.Contains("mean `budget`", page.Body, StringComparison.Ordinal);
        Assert.Contains("8 things in the query are wrong", page.Body, StringComparison.Ordinal);
        Assert.Equal("no-store", page.CacheControl);
    }

    [Theory]
    [InlineData("/v1/catalogues/none/telescopes/capstan-152/recommendation?budget=1", "no catalogue \\\"none\\\"")]
    [InlineData("/v1/catalogues/NONE/telescopes/capstan-152/recommendation?budget=1", "no catalogue")]
    [InlineData("/v1/catalogues/demo/telescopes/capstan-15/recommendation?budget=x", "mean `capstan-152`")]
    [InlineData("/v1/catalogues/none/items/stayrope-2x/match?telescope=x", "no catalogue")]
    [InlineData("/v1/catalogues/demo/items/stayrope-22x/match", "mean `stayrope-2x`")]
    public async Task What_a_path_names_and_there_is_not_is_not_found(string path, string said)
    {
        using var client = service.CreateClient();

        var page = await Page.GetAsync(client, path);

        Assert.Equal(404, page.Status);
        Assert.Contains(said, page.Body, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("capstan-152/recommendation?budget=100", "Shinglet")]
    [InlineData("capstan-152/recommendation", "EUR")]
    [InlineData("../items/kelpstone-7-3/match?telescope=capstan-152", "Reaches up to 167x")]
    public async Task A_page_may_be_a_picture_and_nothing_but_that_or_JSON(string path, string shown)
    {
        var picture = await PageAsync(path, ("Accept", "image/svg+xml"));

        Assert.StartsWith("<svg", picture.Body, StringComparison.Ordinal);
        Assert.Contains(shown, picture.Body, StringComparison.Ordinal);
        Assert.Equal(304, (await PageAsync(path, ("Accept", "image/svg+xml"), ("If-None-Match", picture.ETag!))).Status);
        Assert.NotEqual(picture.ETag, (await PageAsync(path)).ETag);
        Assert.Equal(406, (await PageAsync(path, ("Accept", "text/csv"))).Status);
        Assert.StartsWith("{", (await PageAsync(path, ("Accept", "text/html, application/*;q=0.5"))).Body, StringComparison.Ordinal);
    }

    private async Task<Page> PageAsync(string path, params (string Name, string Value)[] headers)
    {
        using var client = service.CreateClient();
        return await Page.GetAsync(client, $"{Telescopes}/{path}", headers);
    }

    private async Task<Recommendation> RecommendationAsync(string path)
    {
        var page = await PageAsync(path);
        Assert.True(page.Status == 200, page.Body);
        Assert.Empty(AnswerShape.Differences("recommendation", page.Json));
        return page.As<Recommendation>();
    }

    /// <summary>The bytes, but for the catalogue's version and the time, which a page does not tell.</summary>
    private static string WithoutTimes(Answer answer)
    {
        var advice = answer.As<Recommendation>();
        return answer.Body.Replace($"\"version\":\"{advice.Catalogue.Version}\"", "\"version\":null", StringComparison.Ordinal)
            .Replace($"\"milliseconds\":{Reading.Text(advice.Solver.Milliseconds)}", "\"milliseconds\":0", StringComparison.Ordinal);
    }
}
