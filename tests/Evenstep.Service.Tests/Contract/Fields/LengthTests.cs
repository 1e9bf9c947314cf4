namespace Evenstep.Service.Tests.Contract.Fields;

/// <summary>A row of <c>lengths.json</c>: how many elements, members or letters there may be at a place.</summary>
public sealed record LengthRow
{
    /// <summary>The place in the valid recommendation.</summary>
    public required string At { get; init; }

    /// <summary>An element of a list; a <c>#</c> in it stands for its number.</summary>
    public string? Element { get; init; }

    /// <summary>A member of an object, likewise.</summary>
    public string? Member { get; init; }

    /// <summary>A character of a text.</summary>
    public string? Letter { get; init; }

    public required int Least { get; init; }

    public required int Most { get; init; }

    /// <summary>What has to go, for it names something that will be gone.</summary>
    public string? Without { get; init; }

    public string OfLength(int length) => Element is not null ? $"[{BodyPatch.Repeat(Element, length, ", ")}]"
        : Member is not null ? $"{{{BodyPatch.Repeat(Member, length, ", ")}}}"
        : $"\"{BodyPatch.Repeat(Letter!, length, "")}\"";
}

/// <summary>Every length that the contract limits, on both sides.</summary>
public sealed class LengthTests(Service service) : IClassFixture<Service>
{
    private static readonly LengthRow[] Rows = TestFile.Read<LengthRow>("lengths");

    public static TheoryData<string> Places => [.. Rows.Select(row => row.At)];

    [Theory]
    [MemberData(nameof(Places))]
    public async Task Just_within_is_taken(string place)
    {
        foreach (var length in (int[])[RowAt(place).Least, RowAt(place).Most])
        {
            var answer = await PostAsync(RowAt(place), length);
            Assert.True(answer.Status == 200, answer.Body);
        }
    }

    [Theory]
    [MemberData(nameof(Places))]
    public async Task One_too_many_is_refused_with_the_most_there_may_be(string place)
    {
        var row = RowAt(place);

        var answer = await PostAsync(row, row.Most + 1);

        Assert.Equal((400, $"{place} {(row.Letter is null ? "too-many" : "too-long")}"), (answer.Status, Assert.Single(answer.Errors)));
        Assert.Contains($" {row.Most} ", MessageAt(answer, place), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Places))]
    public async Task One_too_few_is_refused_with_the_least_there_may_be(string place)
    {
        var row = RowAt(place);
        if (row.Least == 0)
        {
            return;
        }

        var answer = await PostAsync(row, row.Least - 1);

        Assert.Equal((400, $"{place} {(row.Letter is null ? "too-few" : "too-short")}"), (answer.Status, Assert.Single(answer.Errors)));
        Assert.Contains($" {row.Least} to ", MessageAt(answer, place), StringComparison.Ordinal);
    }

    private static LengthRow RowAt(string place) => Rows.Single(row => row.At == place);

    private static string? MessageAt(Answer answer, string place) =>
        answer.Problem.Errors![place][0].Message;

    private Task<Answer> PostAsync(LengthRow row, int length)
    {
        var changes = new Dictionary<string, string?> { [row.At] = row.OfLength(length) };
        if (row.Without is { } without)
        {
            changes[without] = null;
        }

        return service.PostAsync("/v1/recommendations", BodyPatch.Apply(TestFile.Valid("recommendations"), changes));
    }
}
