using Evenstep.Planning.Tests.Oracle;
using Evenstep.Service.Tests.Answers;
using Evenstep.Service.Tests.Contract.Fields;

namespace Evenstep.Service.Tests.Judges;

/// <summary>The service and its committed document, read by a validator of JSON Schema, agree on what is valid.</summary>
public sealed class JudgeTests(Service service, SchemaJudge judge) : IClassFixture<Service>, IClassFixture<SchemaJudge>
{
    private const int Mutations = 2000;
    private const int MutationsPosted = 400;
    private const int Problems = 60;
    private const int FirstSeed = 300_000;

    private static readonly (string Path, string Text)[] GoodBodies =
    [
        .. ((string[])["recommendation", "assessment", "second-opinion"]).SelectMany(kind => Repository.Examples(kind).Select(Repository.Example)
            .Prepend(TestFile.Valid($"{kind}s")).Select(text => ($"/v1/{kind}s", text))),
        .. Repository.Examples("buying-path").Select(name => ("/v1/buying-paths", Repository.Example(name))),
        .. Repository.Examples("choice").Select(name => ("/v1/choices", Repository.Example(name))),
        .. Repository.Examples("spending-curve").Select(name => ("/v1/spending-curves", Repository.Example(name))),
    ];

    [JudgeFact]
    public void Good_bodies_are_valid()
    {
        Assert.All(GoodBodies, body => Assert.True(ReaderVerdict.Of(body.Path, body.Text).IsTaken));
        Assert.Empty(Disagreements(GoodBodies));
    }

    [JudgeFact]
    public void Bad_bodies_are_judged_alike()
    {
        var read = TestFile.BadBodies.Where(bad => bad.Status is 400 or 404).ToArray();
        Assert.DoesNotContain(read, bad => ReaderVerdict.Of(bad.Path, bad.Text).IsTaken);
        Assert.Empty(Disagreements(read.Select(bad => (bad.Path, bad.Text))));
    }

    [JudgeFact]
    public void Bounds_and_lengths_are_judged_alike_on_both_sides()
    {
        var bounds = TestFile.Read<BoundRow>("bounds").SelectMany(
            row => ((string[])[row.Below, row.Least, row.Most, row.Above, "1e400"]).Select(text => Changed(row.At, text)));
        var lengths = TestFile.Read<LengthRow>("lengths").SelectMany(
            row => ((int[])[row.Least, row.Most, row.Most + 1]).Select(length => Changed(row.At, row.OfLength(length))));
        Assert.Empty(Disagreements([.. bounds, .. lengths]));
    }

    [JudgeFact]
    public void Mutated_bodies_are_judged_alike()
    {
        var mutated = Mutated(Mutations, FirstSeed);

        Assert.Empty(Disagreements(mutated));
        Assert.InRange(mutated.Count(body => ReaderVerdict.Of(body.Path, body.Text).IsTaken), Mutations / 5, Mutations * 4 / 5);
    }

    [JudgeFact]
    public async Task Answers_keep_to_the_document()
    {
        var random = Enumerable.Range(FirstSeed, Problems).Select(seed => ("/v1/recommendations", OracleBody.Of(RandomProblems.Make(seed)).ToJsonString()));
        foreach (var (path, text) in GoodBodies.Concat(random))
        {
            var answer = await service.PostAsync(path, text);
            Assert.Equal(200, answer.Status);
            Assert.Equal("", judge.OfAnswer(path, answer.Status, answer.Body).Errors);
        }
    }

    [JudgeFact]
    public async Task The_known_targets_keep_to_the_document()
    {
        var answer = await service.GetAsync("/v1/targets");

        Assert.Equal("", judge.OfAnswer("/v1/targets", answer.Status, answer.Body, "get").Errors);
    }

    [JudgeFact]
    public async Task Refusals_keep_to_the_document()
    {
        foreach (var bad in TestFile.BadBodies)
        {
            var answer = await service.PostAsync(bad.Path, bad.Text, bad.ContentType);
            Assert.Equal("", judge.OfAnswer(bad.Path, answer.Status, answer.Body).Errors);
        }
    }

    [JudgeFact]
    public async Task Mutated_bodies_are_answered_or_refused_as_the_document_says()
    {
        foreach (var (path, text) in Mutated(MutationsPosted, FirstSeed + 1))
        {
            var answer = await service.PostAsync(path, text);
            Assert.True(answer.Status is 200 or 400 or 404, $"{path} {text}\n{answer.Body}");
            Assert.Equal("", judge.OfAnswer(path, answer.Status, answer.Body).Errors);
        }
    }

    private static (string Path, string Text)[] Mutated(int count, int seed)
    {
        var mutator = new Mutator([.. GoodBodies.Select(body => body.Text)], seed);
        return [.. Enumerable.Range(0, count).Select(i => GoodBodies[i % GoodBodies.Length]).Select(body => (body.Path, mutator.Next(body.Text)))];
    }

    private static (string Path, string Text) Changed(string place, string text) =>
        ("/v1/recommendations", BodyPatch.Apply(TestFile.Valid("recommendations"), new Dictionary<string, string?> { [place] = text }));

    private IEnumerable<string> Disagreements(IEnumerable<(string Path, string Text)> bodies)
    {
        foreach (var (path, text) in bodies)
        {
            var (reader, schema) = (ReaderVerdict.Of(path, text), judge.OfRequest(path, text));
            if (reader.SchemaMustTakeIt != schema.Valid)
            {
                yield return $"{path} {text[..Math.Min(text.Length, 3000)]}\nreader: {reader}\nschema: {(schema.Valid ? "valid" : schema.Errors)}";
            }
        }
    }
}
