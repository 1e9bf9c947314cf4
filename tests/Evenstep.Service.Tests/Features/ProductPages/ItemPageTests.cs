using System.Text.Json;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Features.ProductPages;

/// <summary>An item's page says what it does in a telescope.</summary>
public sealed class ItemPageTests(Service service) : IClassFixture<Service>
{
    private const string Capstan = "telescope=capstan-152";

    [Theory]
    [InlineData(
        "kelpstone-7-3", Capstan, "fills-a-step",
        "Reaches up to 167x; so far the highest power is 103x, though powers up to 200x are useful.")]
    [InlineData(
        "ropewalk-34-8", "apertureMm=203&focalLengthMm=1218&focuserBarrel=2in", "fills-a-step", "Gives a first view, 35x; powers from 34x to 200x are useful.")]
    [InlineData(
        "slackwater-9-2-to-26-9", Capstan, "fills-a-step",
        "Reaches from 90x up to 264x (with Stayrope 2x Barlow); so far the highest power is 103x, though powers up to 200x are useful.")]
    [InlineData("slackwater-9-2-to-26-9", Capstan + "&owned=kelpstone-7-3", "fills-a-step", "Fills the jump from 51x to 103x with 45x to 132x.")]
    [InlineData(
        "slackwater-9-2-to-26-9", "apertureMm=203&focalLengthMm=1218&focuserBarrel=2in", "fills-a-step",
        "Gives first views, 45x to 132x; powers from 34x to 200x are useful.")]
    [InlineData("kelpstone-7-3", Capstan + "&wearsSpectacles=true", "not-usable", "Of no use with this telescope. Its eye relief is 10.3 mm; 15 mm is needed.")]
    [InlineData("ropewalk-34-8", Capstan, "not-usable", "Of no use with this telescope. Its 2in barrel does not fit the focuser.")]
    [InlineData("ebbwick-23-7", Capstan, "repeats", "You have it already.")]
    [InlineData("stayrope-2x", "apertureMm=203&focalLengthMm=1218&focuserBarrel=2in", "changes-nothing", "Changes nothing: you have no eyepiece that fits it.")]
    [InlineData("leadline-11-7", Capstan, "changes-nothing", "Changes nothing: a reticle eyepiece is for centring and measuring, and adds no view.")]
    public async Task The_verdict_says_what_the_item_comes_to(string item, string query, string code, string text)
    {
        var answer = await MatchAsync(item, query);

        Assert.Equal((code, text), (answer.Verdict.Code, answer.Verdict.Text));
    }

    [Fact]
    public async Task The_views_are_those_of_the_item_alone_and_through_each_Barlow_there_is()
    {
        var answer = await MatchAsync("kelpstone-7-3", $"{Capstan}&owned=stayrope-3x");

        Assert.Equal(
            [
                ("kelpstone-7-3", null, 166.6, true, null), ("kelpstone-7-3", "stayrope-2x", 333.2, false, "above-range"),
                ("kelpstone-7-3", "stayrope-3x", 499.7, false, "above-range")
            ],
            answer.Views.Select(view => (view.EyepieceId, view.BarlowId, view.Power, view.Usable, view.NotUsableBecause)));
    }

    [Theory]
    [InlineData("pennywhelk-12-5", true)]
    [InlineData("pennywhelk-22-5", false)]
    public async Task Figures_that_had_to_be_assumed_are_named(string item, bool named) => Assert.Equal(
        named,
        (await MatchAsync(item, "apertureMm=60&focalLengthMm=700&focuserBarrel=0.965in")).Notes.Any(note => note.Code == "assumed-figures"));

    [Fact]
    public async Task The_figures_are_those_of_the_kit_without_and_with_the_item()
    {
        var answer = await MatchAsync("kelpstone-7-3", Capstan);
        var without = await AssessAsync("");
        var with = await AssessAsync("""{ "id": "kelpstone-7-3" }""");

        Assert.Equal(without, answer.Before);
        Assert.Equal(with, answer.After);
        Assert.Equal(without.LargestStep, answer.Fills!.Weighed);
    }

    [Fact]
    public async Task What_repeats_is_listed_though_the_item_fills_a_step()
    {
        // 94x is close to the 103x of what is packed with the telescope; through the Barlow, 189x is new.
        var answer = await MatchAsync("kelpstone-12-9", Capstan);

        Assert.Equal("fills-a-step", answer.Verdict.Code);
        Assert.Equal(188.5, answer.Verdict.Values.GetProperty("power").GetDouble());
        Assert.StartsWith("Reaches up to 189x (with Stayrope 2x Barlow); ", answer.Verdict.Text, StringComparison.Ordinal);
        var pair = Assert.Single(answer.Repeats);
        Assert.Equal("kelpstone-12-9", pair.First.EyepieceId);
    }

    [Theory]
    [InlineData(Capstan)]
    [InlineData(Capstan + "&owned=kelpstone-7-3")]
    [InlineData("apertureMm=203&focalLengthMm=1218&focuserBarrel=2in")]
    public async Task A_zoom_is_told_by_the_powers_at_both_its_ends(string query)
    {
        var answer = await MatchAsync("slackwater-9-2-to-26-9", query);

        var values = JsonSerializer.Deserialize<ViewInWords>(answer.Verdict.Values, JsonSerializerOptions.Web)!;
        var view = answer.Views.Single(view => (view.BarlowId, view.Factor) == (values.BarlowId, values.Factor));
        Assert.Equal((view.Power, view.PowerAtShortest), (values.Power, values.PowerAtShortest));
    }

    [Fact]
    public async Task An_item_whose_every_view_repeats_one_that_is_there_would_not_be_bought_whatever_else_it_does()
    {
        var answer = await MatchAsync("kelpstone-12-9", $"{Capstan}&owned=kelpstone-5-5");

        Assert.Equal("fills-a-step", answer.Verdict.Code);
        Assert.Contains("A recommendation would not buy it, though:", answer.Verdict.Text, StringComparison.Ordinal);
        Assert.Single(answer.Repeats);
    }

    [Fact]
    public async Task An_item_that_repeats_and_fills_no_step_repeats()
    {
        var answer = await MatchAsync("kelpstone-22-8", $"{Capstan}&owned=kelpstone-7-3&owned=kelpstone-12-9&owned=kelpstone-17-2");

        Assert.Equal("repeats", answer.Verdict.Code);
        Assert.Equal(2, answer.Repeats.Count);
        Assert.Null(answer.Fills);
    }

    [Theory]
    [InlineData("tidemoor-19-6", "telescope=jetty-112", true)]
    [InlineData("tidemoor-19-6", Capstan, false)]
    public async Task What_is_against_the_item_itself_is_told(string item, string query, bool isTooSlow)
    {
        var answer = await MatchAsync(item, query);

        Assert.Equal(isTooSlow, answer.Views.Any(view => view.Usable && view.Drawbacks.Contains("steep-cone")));
        Assert.Equal(isTooSlow, answer.Notes.Any(note => note.Code == "fast-telescope" && note.Text.Contains("Tidemoor 19.6 mm", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("", "apertureMm missing", "focalLengthMm missing", "focuserBarrel missing")]
    [InlineData("apertureMm=20&focalLengthMm=1218", "apertureMm out-of-range", "focuserBarrel missing")]
    [InlineData("telescope=capstan-152&apertureMm=200", "apertureMm unknown-field")]
    [InlineData("telescope=capstan-15&owned=none&budget=1", "budget unknown-field", "telescope unknown-telescope")]
    [InlineData("telescope=capstan-152&seeingArcsec=9", "telescope empty-range")]
    [InlineData("telescope=&apertureMm=203&focalLengthMm=1218&focuserBarrel=3in", "focuserBarrel not-one-of")]
    public async Task All_that_is_wrong_with_a_query_is_named_at_once(string query, params string[] errors)
    {
        var answer = await service.GetAsync(PathOf("kelpstone-7-3", query));

        Assert.Equal(400, answer.Status);
        Assert.Equal(errors, answer.Errors.Order(StringComparer.Ordinal));
    }

    private async Task<ItemMatch> MatchAsync(string item, string query)
    {
        var answer = await service.GetAsync(PathOf(item, query));
        Assert.True(answer.Status == 200, answer.Body);
        Assert.Empty(AnswerShape.Differences("match", answer.Json));
        return answer.As<ItemMatch>();
    }

    private async Task<Figures> AssessAsync(string owned) => (await service.PostAsync(
        "/v1/assessments", $$"""{ "telescopes": [ { "id": "capstan-152" } ], "owned": [ {{owned}} ], "catalogue": { "id": "demo" } }""")).As<Assessment>().Kit;

    private static string PathOf(string item, string query) => $"/v1/catalogues/demo/items/{item}/match?{query}";

    private sealed record ViewInWords(string? BarlowId, double Factor, double Power, double? PowerAtShortest);
}
