using System.Text;
using System.Text.Json.Nodes;

namespace Evenstep.Service.Tests.Catalogues.Content;

/// <summary>A catalogue is given back as it came, and equal content is equal to the byte.</summary>
public sealed class ContentTests
{
    /// <summary>Every field of every kind, with letters that JSON could write in several ways.</summary>
    private const string Json =
        """
        { "currency": "SEK", "items": [
          { "kind": "eyepiece", "id": "a/b ~ü", "name": "Näckros \"5\" \\ <b>&'", "line": "Näckros", "focalLengthMm": 5.25, "apparentFieldDeg": 82,
            "eyeReliefMm": 12.5, "fieldStopMm": 7.1, "purpose": "observing", "fastestFocalRatio": 4, "barrel": "1.25in", "massGrams": 210,
            "parfocalGroup": "n", "price": 1999.50, "inStock": true, "url": "https://shop.example/naeckros?a=1&b=2", "sku": "N-5",
            "gtin": "0000000000017", "attributes": { "colour": "svart", "note": "line one\nline two 🔭" } },
          { "kind": "zoom", "id": "z", "shortestFocalLengthMm": 8, "longestFocalLengthMm": 24, "apparentFieldAtShortestDeg": 60,
            "apparentFieldAtLongestDeg": 40, "eyeReliefMm": 15, "barrel": "1.25in", "price": 0.00, "inStock": false },
          { "kind": "barlow", "id": "x2", "factors": [2.5, 1.5], "barrel": "2in", "price": 100000.00, "attributes": {} } ],
          "telescopes": [ { "id": "t", "name": "T", "apertureMm": 30.5, "focalLengthMm": 100, "focuserBarrel": "2in", "included": [ "x2",
            { "kind": "eyepiece", "id": "packed", "focalLengthMm": 10, "apparentFieldDeg": 50, "eyeReliefMm": 8, "barrel": "1.25in" } ] } ] }
        """;

    [Fact]
    public void Nothing_is_lost()
    {
        var given = JsonNode.Parse(Text(Json));

        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(Json), given), given!.ToJsonString());
    }

    [Fact]
    public void What_is_given_back_is_taken_and_given_back_to_the_byte()
    {
        var once = Text(Json);

        Assert.Equal(once, Text(once));
        Assert.Equal(Wares.Read(Json).Version, Wares.Read(once).Version);
    }

    [Theory]
    [InlineData("\"price\": 1999.50", "\"price\": 1.9995e3")]
    [InlineData("\"price\": 1999.50", "\"price\": 1999.5")]
    [InlineData("\"eyeReliefMm\": 12.5", "\"eyeReliefMm\": 1250e-2")]
    [InlineData("\"currency\": \"SEK\", ", "\"currency\":\r\n\t\"SEK\",")]
    [InlineData("Näckros", "N\\u00e4ckros")]
    [InlineData("\"colour\": \"svart\", \"note\": \"line one\\nline two 🔭\"", "\"note\": \"line one\\nline two 🔭\", \"colour\": \"svart\"")]
    [InlineData("\"kind\": \"barlow\", \"id\": \"x2\"", "\"id\": \"x2\", \"name\": null, \"kind\": \"barlow\"")]
    public void What_means_the_same_is_the_same_version(string part, string otherwise)
    {
        var other = Json.Replace(part, otherwise, StringComparison.Ordinal);

        Assert.NotEqual(Json, other);
        Assert.Equal(Text(Json), Text(other));
    }

    [Theory]
    [InlineData("\"price\": 1999.50", "\"price\": 1999.51")]
    [InlineData("\"inStock\": true", "\"inStock\": false")]
    [InlineData(", \"inStock\": true", "")]
    [InlineData("svart", "Svart")]
    [InlineData("[2.5, 1.5]", "[1.5, 2.5]")]
    [InlineData("\"x2\",\n", "")]
    [InlineData(", \"attributes\": {} }", " }")]
    public void Whatever_else_changes_is_another_version(string part, string otherwise)
    {
        var other = Json.ReplaceLineEndings("\n").Replace(part, otherwise, StringComparison.Ordinal);

        Assert.NotEqual(Json, other);
        Assert.NotEqual(Wares.Read(Json).Version, Wares.Read(other).Version);
    }

    [Fact]
    public void A_catalogue_without_telescopes_lists_none()
    {
        const string Without = """{ "currency": "EUR", "items": [] }""";

        Assert.Equal("""{"currency":"EUR","items":[],"telescopes":[]}""", Text(Without));
        Assert.Equal(Text(Without), Text("""{ "telescopes": [], "items": [], "currency": "EUR" }"""));
    }

    [Fact]
    public void A_version_is_a_hash_of_the_content() =>
        Assert.Equal(
            Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(Wares.Read(Json).Content.Span))[..32],
            Wares.Read(Json).Version);

    private static string Text(string json) => Encoding.UTF8.GetString(Wares.Read(json).Content.Span);
}
