using System.Text.Json.Nodes;
using Evenstep.Planning.Tests.Oracle;
using Evenstep.Service.Answering.Metrics;
using Evenstep.Service.Tests.Answering.Metrics;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Features.SecondOpinions;

/// <summary>A shopping list is judged beside the advice.</summary>
public sealed class SecondOpinionTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/second-opinions";
    private const int Problems = 80;
    private const int FirstSeed = 430_000;

    public static TheoryData<int> Seeds => [.. Enumerable.Range(FirstSeed, Problems)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task The_advice_itself_breaks_no_rule_and_differs_in_nothing(int seed)
    {
        var problem = RandomProblems.Make(seed);
        var body = OracleBody.Of(problem);
        var advice = (await service.PostAsync("/v1/recommendations", body.ToJsonString())).As<Recommendation>();

        var answer = await JudgeAsync(body, advice.Purchases.Select(purchase => purchase.ItemId));

        Assert.Equal(Reading.Text(advice.WithoutTime()), Reading.Text(answer.Advice.WithoutTime()));
        Assert.Equal(OracleComparison.OutcomeOf(problem), advice.Outcome);
        if (advice.Outcome == "infeasible")
        {
            Assert.Equal(new Difference(null, null, null, null, null), answer.Difference);
            return;
        }

        Assert.Empty(CodesOf(answer));
        Assert.Empty(answer.List.Exclusions);
        Assert.Equal(advice.After, answer.List.After);
        var (price, step, mismatch, served, comfortable) = answer.Difference;
        Assert.All([(double?)price, step, mismatch, served, comfortable], difference => Assert.Equal(0, difference ?? 0));
    }

    [Fact]
    public void Among_the_problems_is_one_of_every_outcome() => Assert.Equal(
        ["infeasible", "nothing-worthwhile", "optimal"],
        Enumerable.Range(FirstSeed, Problems).Select(seed => OracleComparison.OutcomeOf(RandomProblems.Make(seed))).Distinct().Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task A_list_breaks_just_the_rules_that_the_definitions_say(int seed)
    {
        var problem = RandomProblems.Make(seed);
        var ids = ShoppingLists.Draw(problem, seed);

        var answer = await JudgeAsync(OracleBody.Of(problem), ids);

        Assert.Equal(OracleBreaches.Of(problem, ids).Order(StringComparer.Ordinal), CodesOf(answer).Order(StringComparer.Ordinal));
        Assert.Equal(ExcludedOf(problem, ids), answer.List.Exclusions.Select(one => $"{one.Key} {one.Value}"));
        Assert.Equal(problem.Catalogue.Where(item => ids.Contains(item.Id)).Sum(item => item.Price), answer.List.TotalPrice);
    }

    [Fact]
    public async Task Every_breach_says_what_it_is_about()
    {
        var answer = await JudgeAsync(
            """
            {
              "telescopes": [ { "apertureMm": 100, "focalLengthMm": 1000, "focuserBarrel": "1.25in" } ],
              "owned": [ { "kind": "eyepiece", "focalLengthMm": 20, "apparentFieldDeg": 50, "eyeReliefMm": 16, "barrel": "1.25in" } ],
              "catalogue": { "currency": "EUR", "items": [
                { "id": "b", "kind": "barlow", "factors": [ 2, 2.5 ], "barrel": "1.25in", "price": 30, "name": "Double" },
                { "id": "c", "kind": "barlow", "factors": [ 3 ], "barrel": "1.25in", "price": 30 },
                { "id": "e-10", "kind": "eyepiece", "focalLengthMm": 10, "apparentFieldDeg": 50, "eyeReliefMm": 16, "barrel": "1.25in", "price": 40,
                  "name": "Ten" },
                { "id": "r-8", "kind": "eyepiece", "focalLengthMm": 8, "apparentFieldDeg": 50, "eyeReliefMm": 16, "barrel": "1.25in", "price": 40,
                  "purpose": "reticle" },
                { "id": "r-9", "kind": "eyepiece", "focalLengthMm": 9, "apparentFieldDeg": 50, "eyeReliefMm": 16, "barrel": "1.25in", "price": 40,
                  "purpose": "reticle" } ] },
              "limits": { "budget": 60.5, "maxPurchases": 2, "maxBarlows": 0 },
              "preferences": { "mustInclude": [ "c" ], "mustFrame": [ { "name": "Nebula", "widthDeg": 2 } ], "reticle": { "leastPower": 400 } },
              "shoppingList": [ "b", "e-10", "r-8", "r-9" ]
            }
            """);

        Assert.Equal(
            [
                """{"totalPrice":150.00,"budget":60.50,"currency":"EUR"} The list costs EUR 150.00, more than the budget of EUR 60.50.""",
                """{"purchases":4,"maxPurchases":2} Items on the list: 4; at most 2 may be bought.""",
                """{"barlows":1,"maxBarlows":0} Barlows on the list: 1; at most 0 may be bought.""",
                """{"reticles":2} Reticle eyepieces on the list: 2; one is enough.""",
                """{"telescope":"telescope 1","first":{"eyepieceId":"e-10","barlowId":null,"factor":1,"power":100,"powerAtShortest":null}""" +
                ""","second":{"eyepieceId":"owned-1","barlowId":"b","factor":2,"power":100,"powerAtShortest":null}""" +
                ""","ratio":1,"overlaps":1,"allowedOverlaps":0} """ +
                "Ten (100x) and your 20 mm eyepiece through Double at 2x (100x) overlap in telescope 1 (overlaps: 1, allowed: 0).",
                """{"itemId":"c","name":"c"} You asked for c, but it is not on the list.""",
                """{"name":"Nebula","widthDeg":2,"telescope":null,"trueFieldDeg":1} """ +
                "With the list nothing would show “Nebula” (2°) at once; the widest true field is 1°.",
                """{"leastPower":400,"power":312.5} With the list a reticle eyepiece would reach 313x; at least 400x is wanted.""",
            ],
            answer.List.Breaches.Select(breach => $"{breach.Values.GetRawText()} {breach.Text}"));
    }

    [Fact]
    public async Task An_equal_request_is_given_the_same_answer_without_a_solve_and_a_recommendation_is_none()
    {
        await using var watched = new WatchedService();
        var body = Repository.Example("second-opinion-spectacles");

        var first = await watched.PostAsync(Path, body);
        var second = await watched.PostAsync(Path, body);

        Assert.Equal(first, second);
        Assert.Equal((1, 1, 1), (watched.Solves, watched.CountOf(ServiceMeter.Lookups, "hit"), watched.CountOf(ServiceMeter.Lookups, "miss")));
        Assert.Equal(400, (await watched.PostAsync("/v1/recommendations", body)).Status);
    }

    private async Task<SecondOpinion> JudgeAsync(JsonObject body, IEnumerable<string> ids)
    {
        body["shoppingList"] = new JsonArray([.. ids.Select(id => (JsonNode)id)]);
        return await JudgeAsync(body.ToJsonString());
    }

    private async Task<SecondOpinion> JudgeAsync(string body)
    {
        var answer = await service.PostAsync(Path, body);
        Assert.True(answer.Status == 200, answer.Body);
        Assert.Empty(AnswerShape.Differences("second-opinion", answer.Json));
        return answer.As<SecondOpinion>();
    }

    private static IEnumerable<string?> CodesOf(SecondOpinion answer) => answer.List.Breaches.Select(breach => breach.Code);

    private static IEnumerable<string> ExcludedOf(OracleProblem problem, string[] ids) => Exhaustive.Solve(problem).Exclusions
        .Where(pair => ids.Contains(pair.Key)).OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => $"{pair.Key} {pair.Value}");
}
