using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Tests.Answering.Metrics;

namespace Evenstep.Service.Tests.Answering.Caching;

/// <summary>The same request gets the same answer, to the byte, but for the time that solving took.</summary>
public sealed partial class RepeatTests
{
    private const int Repeats = 100;

    public static TheoryData<string> Examples => [.. Repository.Examples("recommendation")];

    [Theory]
    [MemberData(nameof(Examples))]
    public async Task Two_services_give_the_same_answer_however_the_body_is_ordered(string example)
    {
        await using var before = new WatchedService(null, (CachingSetup.MegabytesKey, "0"));
        await using var after = new WatchedService(null, (CachingSetup.MegabytesKey, "0"));
        var body = JsonNode.Parse(Repository.Example(example))!;
        var dice = new Random(7);
        var first = await AnswerAsync(before, body.ToJsonString());

        for (var i = 0; i < Repeats; i++)
        {
            var shuffled = Shuffled(body, dice)!.ToJsonString();
            var (one, other) = (await AnswerAsync(before, shuffled), await AnswerAsync(after, shuffled));
            Assert.Equal(one, other);
            Assert.Equal(first, one);
        }
    }

    [Fact]
    public async Task A_thousand_repeats_before_and_after_a_restart_get_the_same_answer()
    {
        const int Thousand = 1000;
        var body = JsonNode.Parse(Repository.Example("recommendation-spectacles"))!;
        var dice = new Random(11);
        HashSet<string> answers = [];
        for (var start = 0; start < 2; start++)
        {
            await using var service = new WatchedService(null, (CachingSetup.MegabytesKey, "0"));
            for (var i = 0; i < Thousand / 2; i++)
            {
                answers.Add(await AnswerAsync(service, Shuffled(body, dice)!.ToJsonString()));
            }
        }

        Assert.Single(answers);
    }

    private static async Task<string> AnswerAsync(WatchedService service, string body)
    {
        var answer = await service.RecommendAsync(body);
        Assert.Equal(200, answer.Status);
        return Milliseconds().Replace(answer.Body, "");
    }

    private static JsonNode? Shuffled(JsonNode? node, Random dice) => node switch
    {
        JsonObject members => new JsonObject(InAnyOrder(members.Select(member => KeyValuePair.Create(member.Key, Shuffled(member.Value, dice))), dice)),

        // The order of telescopes and targets is that of the answer.
        JsonArray { Parent: JsonObject, Count: > 1 } list when list.GetPropertyName() is "telescopes" or "targets" =>
            new JsonArray([.. list.Select(one => Shuffled(one, dice))]),
        JsonArray list => new JsonArray([.. InAnyOrder(list.Select(one => Shuffled(one, dice)), dice)]),
        _ => node?.DeepClone(),
    };

    private static T[] InAnyOrder<T>(IEnumerable<T> things, Random dice)
    {
        T[] shuffled = [.. things];
        dice.Shuffle(shuffled);
        return shuffled;
    }

    [GeneratedRegex(@"""milliseconds"":[0-9.]+")]
    private static partial Regex Milliseconds();
}
