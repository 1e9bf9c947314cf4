using System.Text;
using System.Text.Json.Nodes;
using System.Xml.Linq;
using Evenstep.Planning.Tests.Oracle;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Features.Choices;

/// <summary>Each choice is what the recommendation for its way of weighing buys.</summary>
public sealed class ChoicesTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/choices";
    private const int Problems = 40;
    private const int FirstSeed = 560_000;

    private static readonly string[] Codes = ["least-money", "comfort", "no-barlow", "widest-views"];

    public static TheoryData<int> Seeds => [.. Enumerable.Range(FirstSeed, Problems)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public Task A_random_problem_is_weighed_in_every_way(int seed) => WeighsInEveryWayAsync(OracleBody.Of(RandomProblems.Make(seed)));

    [Fact]
    public Task The_example_is_weighed_in_every_way() => WeighsInEveryWayAsync(Example());

    [Fact]
    public async Task What_is_preferred_stands_aside()
    {
        var preferring = Example();
        preferring["preferences"]!["prefer"] = "light-weight";

        Assert.Equal(
            WithoutTime(await service.PostAsync(Path, Example().ToJsonString())), WithoutTime(await service.PostAsync(Path, preferring.ToJsonString())));
    }

    [Fact]
    public async Task Each_telescope_shows_what_it_does_with_each_choice()
    {
        var answer = (await service.PostAsync(Path, Example().ToJsonString())).As<ChoicesSideBySide>();

        var telescope = Assert.Single(answer.Telescopes);
        Assert.Equal(answer.Before, telescope.Before.Figures());
        Assert.Equal(answer.Choices.Select(choice => string.Join(' ', choice.Codes)), telescope.Choices.Select(choice => string.Join(' ', choice.Codes)));
        Assert.Equal(answer.Choices.Select(choice => choice.After), telescope.Choices.Select(choice => choice.Ladder.Figures()));
    }

    [Fact]
    public async Task Without_an_allowed_set_there_are_no_choices_and_the_conflicts_are_those_of_the_recommendation()
    {
        var body = Example();
        body["limits"]!["budget"] = 10;
        var answer = (await service.PostAsync(Path, body.ToJsonString())).As<ChoicesSideBySide>();
        var advice = (await service.PostAsync("/v1/recommendations", body.ToJsonString())).As<Recommendation>();

        Assert.Equal(("infeasible", "infeasible"), (answer.Outcome, advice.Outcome));
        Assert.Empty(answer.Choices);
        Assert.Equal(Reading.Text(advice.Conflicts!), Reading.Text(answer.Conflicts!));
    }

    [Fact]
    public async Task A_way_that_no_set_allows_is_named()
    {
        var body = Demo();
        body["limits"]!["budget"] = 500;
        body["limits"]!["maxPurchases"] = 5;
        body["preferences"] = new JsonObject { ["reticle"] = new JsonObject { ["leastPower"] = 150 } };

        var answer = (await service.PostAsync(Path, body.ToJsonString())).As<ChoicesSideBySide>();

        Assert.DoesNotContain("no-barlow", answer.Choices.SelectMany(choice => choice.Codes));
        Assert.Equal(
            "No purchases meet all of your wishes within your limits with: No Barlow.",
            Assert.Single(answer.Notes, note => note.Code == "choice-infeasible").Text);
    }

    [Fact]
    public async Task A_Barlow_that_must_be_bought_leaves_no_choice_without_one()
    {
        var body = Demo();
        body["preferences"] = new JsonObject { ["mustInclude"] = new JsonArray("stayrope-2x") };

        var answer = (await service.PostAsync(Path, body.ToJsonString())).As<ChoicesSideBySide>();

        Assert.DoesNotContain("no-barlow", answer.Choices.SelectMany(choice => choice.Codes));
        var note = Assert.Single(answer.Notes, note => note.Code == "choice-infeasible");
        Assert.Equal(("no-barlow", "stayrope-2x"), (WayOf(note), note.Values.GetProperty("itemIds")[0].GetString()));
        Assert.StartsWith("Left out: No Barlow. For ", note.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_purchases_carry_what_those_of_a_recommendation_do()
    {
        var body = Example();
        body["preferences"]!["prefer"] = "comfort";
        var advice = JsonNode.Parse((await service.PostAsync("/v1/recommendations", body.ToJsonString())).Body)!["purchases"]!.AsArray();
        var choices = JsonNode.Parse((await service.PostAsync(Path, body.ToJsonString())).Body)!["choices"]!.AsArray();
        var comfort = choices.Single(choice => choice!["codes"]!.AsArray().Any(code => $"{code}" == "comfort"))!["purchases"]!.AsArray();

        string[] fields = ["itemId", "line", "url", "sku", "gtin", "attributes"];
        Assert.Equal(
            advice.SelectMany(one => fields.Select(field => one![field]?.ToJsonString())),
            comfort.SelectMany(one => fields.Select(field => one![field]?.ToJsonString())));
        Assert.All(comfort, one => Assert.All(fields, field => Assert.True(one!.AsObject().ContainsKey(field), field)));
    }

    [Theory]
    [InlineData("recommendations")]
    [InlineData("choices")]
    public async Task The_picture_of_what_is_not_possible_says_what_would_help(string endpoint)
    {
        var body = Demo();
        body["limits"]!["budget"] = 10;
        body["preferences"] = new JsonObject { ["mustInclude"] = new JsonArray("stayrope-2x") };
        var notes = JsonNode.Parse((await service.PostAsync($"/v1/{endpoint}", body.ToJsonString())).Body)!["notes"]!.AsArray();
        var picture = await PictureAsync($"/v1/{endpoint}", body);

        var remedy = $"{notes.Single(note => $"{note!["code"]}" == "larger-budget-helps")!["text"]}";
        Assert.Contains(remedy.Replace('\u00A0', ' '), DescriptionOf(picture).Replace('\u00A0', ' '), StringComparison.Ordinal);
        Assert.DoesNotContain("  ", DescriptionOf(picture), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_picture_says_how_comfortable_each_choice_is() =>
        Assert.Matches(@"Comfort, .*\d% comfortable\.", DescriptionOf(await PictureAsync(Path, Example())));

    [Theory]
    [InlineData("en", "Comfort")]
    [InlineData("de", "Bequem")]
    public async Task The_picture_draws_each_choice_under_its_name(string language, string name)
    {
        using var client = service.CreateClient();
        using var content = new StringContent(Example().ToJsonString(), Encoding.UTF8, "application/json");
        using var request = new HttpRequestMessage(HttpMethod.Post, Path) { Content = content };
        request.Headers.Add("Accept", "image/svg+xml");
        request.Headers.Add("Accept-Language", language);

        using var answer = await client.SendAsync(request);

        var picture = await answer.Content.ReadAsStringAsync();
        Assert.StartsWith("<svg", picture, StringComparison.Ordinal);
        Assert.Contains(name, picture, StringComparison.Ordinal);
    }

    private async Task WeighsInEveryWayAsync(JsonObject body)
    {
        var answer = (await service.PostAsync(Path, body.ToJsonString())).As<ChoicesSideBySide>();

        Assert.Equal(answer.Choices.Count, answer.Choices.Select(ItemsOf).Distinct().Count());
        Assert.Equal(answer.Choices.Select(choice => choice.TotalPrice).Order(), answer.Choices.Select(choice => choice.TotalPrice));
        foreach (var code in Codes)
        {
            var advice = (await service.PostAsync("/v1/recommendations", Weighing(body, code).ToJsonString())).As<Recommendation>();
            var choice = answer.Choices.SingleOrDefault(one => one.Codes.Contains(code));

            var isLeftOut = advice.Outcome == "infeasible" || (code == "no-barlow" && advice.Purchases.Any(one => one.Kind == "barlow"));
            Assert.Equal(isLeftOut, choice is null);
            Assert.Equal(isLeftOut && answer.Choices.Count > 0, answer.Notes.Any(note => note.Code == "choice-infeasible" && WayOf(note) == code));
            if (choice is null)
            {
                continue;
            }

            Assert.Equal(advice.TotalPrice, choice.TotalPrice);
            Assert.Equal(advice.After, choice.After);
            Assert.Equal(advice.Purchases.Select(one => (one.ItemId, one.Order)), choice.Purchases.Select(one => (one.ItemId, one.Order)));
        }

        var comfort = answer.Choices.SingleOrDefault(choice => choice.Codes.Contains("comfort"));
        Assert.All(answer.Choices, choice => Assert.Equal(
            MoneyCode(choice, comfort!),
            choice.Differences.Select(one => one.Code).FirstOrDefault(code => code.StartsWith("costs", StringComparison.Ordinal))));
    }

    private static string? WayOf(Remark note) => note.Values.GetProperty("choice").GetString();

    private static string? MoneyCode(Choice choice, Choice comfort) =>
        choice.TotalPrice < comfort.TotalPrice ? "costs-less"
        : choice.TotalPrice > comfort.TotalPrice ? "costs-more" : null;

    private static JsonObject Weighing(JsonObject body, string code)
    {
        var weighed = body.DeepClone().AsObject();
        var preferences = (weighed["preferences"] ??= new JsonObject()).AsObject();
        preferences["prefer"] = code switch { "least-money" => "low-price", "widest-views" => "wide-field", _ => "comfort" };
        if (code == "no-barlow")
        {
            preferences["barlows"] = "avoid";
        }

        return weighed;
    }

    private async Task<string> PictureAsync(string path, JsonObject body)
    {
        using var client = service.CreateClient();
        using var content = new StringContent(body.ToJsonString(), Encoding.UTF8, "application/json");
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = content };
        request.Headers.Add("Accept", "image/svg+xml");
        using var answer = await client.SendAsync(request);
        return await answer.Content.ReadAsStringAsync();
    }

    private static string DescriptionOf(string picture) => XDocument.Parse(picture).Descendants().Single(one => one.Name.LocalName == "desc").Value;

    private static JsonObject Demo() => JsonNode.Parse("""
        {"telescopes":[{"apertureMm":203,"focalLengthMm":1218,"focuserBarrel":"2in"}],"catalogue":{"id":"demo"},"limits":{"budget":300}}
        """)!.AsObject();

    private static JsonObject Example() => JsonNode.Parse(Repository.Example("choice-spectacles"))!.AsObject();

    private static string ItemsOf(Choice choice) => string.Join(' ', choice.Purchases.Select(one => one.ItemId).Order(StringComparer.Ordinal));

    private static string WithoutTime(Answer answer)
    {
        var json = JsonNode.Parse(answer.Body)!;
        json["solver"]!["milliseconds"] = 0;
        return json.ToJsonString();
    }
}
