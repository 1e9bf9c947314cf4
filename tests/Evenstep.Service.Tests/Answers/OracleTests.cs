using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Service.Tests.Answers;

/// <summary>Random problems over HTTP, against an exhaustive solver that shares no code with the service.</summary>
public sealed partial class OracleTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/recommendations";
    private const int ProblemsPerBatch = 50;

    /// <summary>Problems that the planning library's own tests do not try.</summary>
    private const int FirstSeed = 100_000;

    public static TheoryData<int> Batches => [.. Enumerable.Range(0, 8)];

    public static TheoryData<int> FewBatches => [.. Enumerable.Range(0, 2)];

    [Theory]
    [MemberData(nameof(Batches))]
    public async Task Answers_agree_with_exhaustive_search(int batch)
    {
        var differences = new List<string>();
        foreach (var seed in SeedsOf(batch))
        {
            var problem = RandomProblems.Make(seed);
            var answer = await service.PostAsync(Path, OracleBody.Of(problem).ToJsonString());
            differences.AddRange(answer.Status == 200
                ? OracleComparison.Differences(problem, answer.As<Recommendation>()).Select(difference => $"seed {seed}: {difference}")
                : [$"seed {seed}: {answer.Body}"]);
        }

        Assert.Empty(differences.Take(20));
    }

    [Theory]
    [MemberData(nameof(FewBatches))]
    public async Task A_shuffled_body_gets_the_same_answer_to_the_byte(int batch)
    {
        foreach (var seed in SeedsOf(batch))
        {
            var problem = RandomProblems.Make(seed);
            var shuffled = InAnotherOrder(OracleBody.Of(RandomProblems.Shuffle(problem, seed)), new Random(seed));

            var first = await service.PostAsync(Path, OracleBody.Of(problem).ToJsonString());
            var second = await service.PostAsync(Path, shuffled!.ToJsonString());

            Assert.Equal(WithoutTime(first), WithoutTime(second));
        }
    }

    [Fact]
    public async Task The_same_body_gets_the_same_answer_but_for_the_time()
    {
        foreach (var seed in SeedsOf(0).Take(10))
        {
            var body = OracleBody.Of(RandomProblems.Make(seed)).ToJsonString();

            var first = await service.PostAsync(Path, body);
            var second = await service.PostAsync(Path, body);

            Assert.Equal(Milliseconds().Replace(first.Body, ""), Milliseconds().Replace(second.Body, ""));
        }
    }

    private static IEnumerable<int> SeedsOf(int batch) => Enumerable.Range(FirstSeed + (batch * ProblemsPerBatch), ProblemsPerBatch);

    /// <summary>The fields of every object in another order; the lists stay, for the order of telescopes and demands is told.</summary>
    private static JsonNode? InAnotherOrder(JsonNode? json, Random random)
    {
        if (json is JsonArray list)
        {
            return new JsonArray([.. list.Select(one => InAnotherOrder(one, random))]);
        }

        if (json is not JsonObject fields)
        {
            return json?.DeepClone();
        }

        var shuffled = fields.ToArray();
        random.Shuffle(shuffled);
        return new JsonObject(shuffled.Select(field => KeyValuePair.Create(field.Key, InAnotherOrder(field.Value, random))));
    }

    private static string WithoutTime(Answer answer) => Milliseconds().Replace(answer.Body, "");

    [GeneratedRegex("\"milliseconds\":[0-9.E+-]+")]
    private static partial Regex Milliseconds();
}
