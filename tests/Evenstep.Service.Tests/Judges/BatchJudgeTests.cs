using Evenstep.Service.Tests.Features.Batches;

namespace Evenstep.Service.Tests.Judges;

/// <summary>The service and its committed document agree on what a line of a batch may be, and answers to lines keep to it.</summary>
public sealed class BatchJudgeTests(Service service, SchemaJudge judge) : IClassFixture<Service>, IClassFixture<SchemaJudge>
{
    private const int Mutations = 500;
    private const int Seed = 500_000;

    private static readonly string[] Good = [Batch.Line("a"), Batch.Line("b", "recommendation-spectacles"), Repository.Example("batch-line")];

    [JudgeFact]
    public void Mutated_lines_are_judged_alike()
    {
        string[] lines = [.. Good, .. Mutated()];

        Assert.DoesNotContain(lines, text => ReaderVerdict.Of(Batch.Path, text).SchemaMustTakeIt != judge.OfRequest(Batch.Path, text).Valid);
        Assert.InRange(lines.Count(text => ReaderVerdict.Of(Batch.Path, text).IsTaken), Mutations / 5, Mutations * 4 / 5);
    }

    [JudgeFact]
    public async Task Answers_keep_to_the_document_and_tell_what_is_taken()
    {
        string[] lines = [.. Good.Concat(Mutated()).Select(line => line.ReplaceLineEndings(" "))];

        var answer = await service.PostAsync(Batch.Path, string.Join('\n', lines), Batch.MediaType);

        var answers = answer.Body.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.All(answers, one => Assert.Equal("", judge.OfAnswer(Batch.Path, 200, one).Errors));
        Assert.Equal(
            lines.Select(line => ReaderVerdict.Of(Batch.Path, line).IsTaken),
            Batch.LinesOf(answer.Body).Select(one => one.Recommendation is not null));
    }

    private static IEnumerable<string> Mutated()
    {
        var mutator = new Mutator(Good, Seed);
        return Enumerable.Range(0, Mutations).Select(i => mutator.Next(Good[i % Good.Length]));
    }
}
