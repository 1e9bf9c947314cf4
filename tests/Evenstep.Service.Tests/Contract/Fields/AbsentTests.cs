using Evenstep.Service.Tests.Judges;

namespace Evenstep.Service.Tests.Contract.Fields;

/// <summary>Where a field tells two forms of an object apart, null is as good as absent.</summary>
public sealed class AbsentTests(SchemaJudge judge) : IClassFixture<SchemaJudge>
{
    public static TheoryData<string, string, bool> Changes => new()
    {
        { "/telescopes/0/id", "null", true },
        { "/telescopes/0", """{ "id": null, "apertureMm": 203, "focalLengthMm": 1218, "focuserBarrel": "2in" }""", true },
        { "/telescopes/0", """{ "id": null, "withIncluded": true }""", false },
        { "/catalogue/id", "null", true },
        { "/catalogue", """{ "id": null }""", false },
        { "/owned/0", """{ "kind": null, "id": "e-12" }""", true },
        { "/owned/0", """{ "kind": null, "id": "e-12", "barrel": "2in" }""", false },
        { "/owned/0", """{ "kind": null }""", false },
        { "/owned/0", """{ "kind": null, "id": null }""", false },
        { "/catalogue/items/0/kind", "null", false },
    };

    [Theory]
    [MemberData(nameof(Changes))]
    public void The_reader_takes_null_for_absent(string at, string value, bool isTaken) =>
        Assert.Equal(isTaken, ReaderVerdict.Of("/v1/recommendations", Changed(at, value)).IsTaken);

    [JudgeFact]
    public void The_document_says_the_same() => Assert.All(Changes, row =>
        Assert.Equal(row[2], judge.OfRequest("/v1/recommendations", Changed((string)row[0], (string)row[1])).Valid));

    private static string Changed(string at, string value) =>
        BodyPatch.Apply(TestFile.Valid("recommendations"), new Dictionary<string, string?> { [at] = value });
}
