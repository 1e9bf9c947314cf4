namespace Evenstep.Service.Tests.Contract.Fields;

/// <summary>A row of <c>bounds.json</c>: the least and the most that a number may be, with numbers just beyond.</summary>
public sealed record BoundRow
{
    /// <summary>The place in the valid recommendation.</summary>
    public required string At { get; init; }

    public required string Below { get; init; }

    public required string Least { get; init; }

    public required string Most { get; init; }

    public required string Above { get; init; }

    /// <summary>Where a range is then empty, if nothing could be beyond this number.</summary>
    public string? EmptyAtLeast { get; init; }

    public string? EmptyAtMost { get; init; }
}

/// <summary>Every bound of the contract, on both sides.</summary>
public sealed class BoundTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/recommendations";

    private static readonly BoundRow[] Rows = TestFile.Read<BoundRow>("bounds");

    public static TheoryData<string> Places => [.. Rows.Select(row => row.At)];

    [Theory]
    [MemberData(nameof(Places))]
    public async Task Just_within_is_taken(string place)
    {
        var row = RowAt(place);

        await Takes(place, row.Least, row.EmptyAtLeast);
        await Takes(place, row.Most, row.EmptyAtMost);
    }

    [Theory]
    [MemberData(nameof(Places))]
    public async Task Just_beyond_is_refused_with_the_number_and_both_bounds(string place)
    {
        var row = RowAt(place);

        await Refuses(row, row.Below);
        await Refuses(row, row.Above);
        await Refuses(row, "-1e308");
        await Refuses(row, "1e400");
    }

    [Theory]
    [MemberData(nameof(Places))]
    public async Task Anything_but_a_number_is_refused(string place)
    {
        foreach (var other in (string[])["\"12\"", "true", "{}", "[]"])
        {
            Assert.Equal([$"{place} wrong-type"], (await PostAsync(place, other)).Errors);
        }
    }

    private static BoundRow RowAt(string place) => Rows.Single(row => row.At == place);

    private async Task Takes(string place, string number, string? emptyRange)
    {
        var answer = await PostAsync(place, number);

        if (emptyRange is null)
        {
            Assert.True(answer.Status == 200, $"{number}: {answer.Body}");
        }
        else
        {
            Assert.Equal([$"{emptyRange} empty-range"], answer.Errors);
        }
    }

    private async Task Refuses(BoundRow row, string number)
    {
        var answer = await PostAsync(row.At, number);

        Assert.Equal((400, $"{row.At} out-of-range"), (answer.Status, Assert.Single(answer.Errors)));
        var message = answer.Problem.Errors![row.At][0].Message;
        Assert.StartsWith($"{number} was given;", message, StringComparison.Ordinal);
        Assert.Contains($"from {row.Least} to {row.Most}", message, StringComparison.Ordinal);
    }

    private Task<Answer> PostAsync(string place, string text) =>
        service.PostAsync(Path, BodyPatch.Apply(TestFile.Valid("recommendations"), new Dictionary<string, string?> { [place] = text }));
}
