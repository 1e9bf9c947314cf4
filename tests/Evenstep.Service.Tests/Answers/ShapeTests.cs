using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Service.Tests.Answers;

/// <summary>Every example is answered, and every answer has the fields that the contract names.</summary>
public sealed class ShapeTests(Service service) : IClassFixture<Service>
{
    private const int Problems = 60;
    private const int FirstSeed = 200_000;

    private static readonly string[] Shapes = ["recommendation", "assessment", "second-opinion", "spending-curve", "buying-path", "choice"];

    public static TheoryData<int> Seeds => [.. Enumerable.Range(FirstSeed, Problems)];

    public static TheoryData<string> Examples => [.. Shapes.SelectMany(Repository.Examples)];

    [Theory]
    [MemberData(nameof(Examples))]
    public async Task Every_example_is_answered_in_the_shape_of_the_contract(string example)
    {
        var shape = Shapes.Single(one => example.StartsWith(one, StringComparison.Ordinal));

        var answer = await service.PostAsync($"/v1/{shape}s", Repository.Example(example));

        Assert.True(answer.Status == 200, answer.Body);
        Assert.Equal("application/json", answer.ContentType);
        Assert.Empty(AnswerShape.Differences(shape, answer.Json));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public async Task A_random_problem_is_answered_in_the_shape_of_the_contract(int seed)
    {
        var problem = RandomProblems.Make(seed);
        var answer = await service.PostAsync("/v1/recommendations", OracleBody.Of(problem).ToJsonString());
        var advice = answer.As<Recommendation>();

        Assert.Empty(AnswerShape.Differences("recommendation", answer.Json));
        Assert.Empty(Unordered(advice));
        Assert.Equal(OracleComparison.OutcomeOf(problem), advice.Outcome);
    }

    [Fact]
    public void Among_the_problems_is_one_of_every_outcome() => Assert.Equal(
        ["infeasible", "nothing-worthwhile", "optimal"],
        Enumerable.Range(FirstSeed, Problems).Select(seed => OracleComparison.OutcomeOf(RandomProblems.Make(seed))).Distinct().Order(StringComparer.Ordinal));

    [Fact]
    public async Task Excluded_items_are_counted_unless_the_list_is_asked_for()
    {
        var body = OracleBody.Of(RandomProblems.Make(FirstSeed));
        var listed = (await service.PostAsync("/v1/recommendations", body.ToJsonString())).As<Recommendation>().ListOfExcluded();
        body.Remove("explain");

        var counted = (await service.PostAsync("/v1/recommendations", body.ToJsonString())).As<Recommendation>().CountsOfExcluded();

        Assert.NotEmpty(listed);
        Assert.Equal(
            listed.GroupBy(one => one.Reason).Select(group => $"{group.Key} {group.Count()}").Order(StringComparer.Ordinal),
            counted.Select(count => $"{count.Key} {count.Value}").Order(StringComparer.Ordinal));
    }

    /// <summary>What is not in the order that the contract says.</summary>
    private static IEnumerable<string> Unordered(Recommendation answer)
    {
        if (!answer.Purchases.Select(one => one.Order).SequenceEqual(Enumerable.Range(1, answer.Purchases.Count)))
        {
            yield return "purchases";
        }

        foreach (var views in answer.Telescopes.Select(telescope => telescope.Before.Views))
        {
            var powers = views.Select(view => view.Power).ToArray();
            if (!powers.SequenceEqual(powers.Order()))
            {
                yield return $"views: {string.Join(' ', powers)}";
            }
        }
    }
}
