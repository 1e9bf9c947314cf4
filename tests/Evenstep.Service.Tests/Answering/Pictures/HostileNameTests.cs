using System.Text.Json;
using Evenstep.Service.Answering.Pictures;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Tests.Answering.Pictures;

/// <summary>Names do no harm, whatever they are.</summary>
public sealed class HostileNameTests
{
    public static TheoryData<string> Hostile => [.. HostileNames.All];

    [Theory]
    [MemberData(nameof(Hostile))]
    public void A_name_is_shown_as_text_and_told_in_full(string name)
    {
        var body = $$"""
            { "telescopes": [ { "name": {{Json(name)}}, "apertureMm": 203, "focalLengthMm": 1218, "focuserBarrel": "2in" } ],
              "owned": [ { "kind": "eyepiece", "name": {{Json(name)}}, "focalLengthMm": 20, "apparentFieldDeg": 52, "eyeReliefMm": 21, "barrel": "1.25in" } ],
              "catalogue": { "currency": "EUR", "items": [] }, "limits": { "budget": 1 } }
            """;

        var picture = new Picture(LadderPicture.Draw(Scenes.Of(body), Language.English));

        var clean = Typesetting.Clean(name);
        Assert.Contains(Typesetting.Quoted(name), picture.Title, StringComparison.Ordinal);
        Assert.Contains(Typesetting.Quoted(name), picture.Description, StringComparison.Ordinal);
        Assert.Contains(picture.Root.Descendants(Svg.Space + "text"), text => Picture.Shown(text).TrimStart('\u2068')[0] == clean[0]);
    }

    [Theory]
    [InlineData("a\u0000b\u0007c", "a b c")]
    [InlineData("one\r\n\ttwo", "one two")]
    [InlineData("not \uFFFE a character", "not \uFFFD a character")]
    [InlineData("\u202Eturned\u202C \u2067round\u2069", "turned round")]
    [InlineData("e\u0301\u0301\u0301\u0301", "e\u0301\u0301")]
    [InlineData("\u0000", "…")]
    [InlineData("<b>&amp;", "<b>&amp;")]
    public void A_name_is_cleaned_of_what_would_leave_its_place(string name, string clean) => Assert.Equal(clean, Typesetting.Clean(name));

    [Fact]
    public void Half_a_pair_of_surrogates_is_marked_as_unknown()
    {
        Assert.Equal("half \uFFFD pair", Typesetting.Clean("half " + '\uD83D' + " pair"));
        Assert.Equal("\uFFFD", Typesetting.Clean('\uDC00'.ToString()));
        Assert.Equal("\uFFFD", Typesetting.Valid('\uDC00'.ToString()));
    }

    [Fact]
    public void A_name_from_right_to_left_turns_nothing_around_it()
    {
        Assert.Equal("\u2068שלום\u2069", Typesetting.Quoted("שלום"));
        Assert.Equal("Plain 30", Typesetting.Quoted("Plain 30"));
    }

    private static string Json(string text) => JsonSerializer.Serialize(text);
}
