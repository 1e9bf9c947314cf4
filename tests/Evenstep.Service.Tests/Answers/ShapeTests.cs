using System.Text.Json;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Service.Tests.Answers;

/// <summary>Every example is answered, and every answer has the fields that the contract names.</summary>
public sealed class ShapeTests(Service service) : IClassFixture<Service>
{
    private const int Problems = 60;
    private const int FirstSeed = 200_000;

    private static readonly string[] Shapes = ["recommendation", "assessment", "second-opinion", "spending-curve", "buying-path"];

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

    [Fact]
    public async Task Random_problems_of_every_outcome_are_answered_in_the_shape_of_the_contract()
    {
        var outcomes = new HashSet<string>();
        foreach (var seed in Enumerable.Range(FirstSeed, Problems))
        {
            var answer = (await service.PostAsync("/v1/recommendations", OracleBody.Of(RandomProblems.Make(seed)).ToJsonString())).Json;

            Assert.Empty(AnswerShape.Differences("recommendation", answer));
            Assert.Empty(Unordered(answer));
            outcomes.Add(answer.GetProperty("outcome").GetString()!);
        }

        Assert.Equal(["infeasible", "nothing-worthwhile", "optimal"], outcomes.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Excluded_items_are_counted_unless_the_list_is_asked_for()
    {
        var body = OracleBody.Of(RandomProblems.Make(FirstSeed));
        var listed = (await service.PostAsync("/v1/recommendations", body.ToJsonString())).Json.GetProperty("excluded").EnumerateArray().ToArray();
        body.Remove("explain");

        var counted = (await service.PostAsync("/v1/recommendations", body.ToJsonString())).Json.GetProperty("excluded");

        Assert.NotEmpty(listed);
        Assert.Equal(
            listed.GroupBy(one => one.GetProperty("reason").GetString()).Select(group => $"{group.Key} {group.Count()}").Order(StringComparer.Ordinal),
            counted.EnumerateObject().Select(count => $"{count.Name} {count.Value}").Order(StringComparer.Ordinal));
    }

    /// <summary>What is not in the order that the contract says.</summary>
    private static IEnumerable<string> Unordered(JsonElement answer)
    {
        var orders = answer.GetProperty("purchases").EnumerateArray().Select(one => one.GetProperty("order").GetInt32());
        if (!orders.SequenceEqual(Enumerable.Range(1, answer.GetProperty("purchases").GetArrayLength())))
        {
            yield return "purchases";
        }

        foreach (var views in answer.GetProperty("telescopes").EnumerateArray().Select(telescope => telescope.GetProperty("before").GetProperty("views")))
        {
            var powers = views.EnumerateArray().Select(view => view.GetProperty("power").GetDouble()).ToArray();
            if (!powers.SequenceEqual(powers.Order()))
            {
                yield return $"views: {string.Join(' ', powers)}";
            }
        }
    }
}
