using System.Text;
using System.Text.Json.Nodes;
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

            Assert.Equal(advice.Outcome == "infeasible", choice is null);
            Assert.Equal(advice.TotalPrice, choice?.TotalPrice);
            Assert.Equal(advice.After, choice?.After);
            Assert.Equal(advice.Purchases.Select(one => (one.ItemId, one.Order)), (choice?.Purchases ?? []).Select(one => (one.ItemId, one.Order)));
        }

        var comfort = answer.Choices.SingleOrDefault(choice => choice.Codes.Contains("comfort"));
        Assert.All(answer.Choices, choice => Assert.Equal(
            MoneyCode(choice, comfort!),
            choice.Differences.Select(one => one.Code).FirstOrDefault(code => code.StartsWith("costs", StringComparison.Ordinal))));
    }

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

    private static JsonObject Example() => JsonNode.Parse(Repository.Example("choice-spectacles"))!.AsObject();

    private static string ItemsOf(Choice choice) => string.Join(' ', choice.Purchases.Select(one => one.ItemId).Order(StringComparer.Ordinal));

    private static string WithoutTime(Answer answer)
    {
        var json = JsonNode.Parse(answer.Body)!;
        json["solver"]!["milliseconds"] = 0;
        return json.ToJsonString();
    }
}
