using System.Text.Json;
using System.Text.Json.Nodes;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Warnings;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Tests.Catalogues.Csv;

namespace Evenstep.Service.Tests.Catalogues.Warnings;

public sealed class WarningTests
{
    private const string Eyepiece = """
        {"id":"a","kind":"eyepiece","focalLengthMm":24,"apparentFieldDeg":64,"eyeReliefMm":15,"barrel":"1.25in","fieldStopMm":27,
         "price":99,"gtin":"4006381333931"}
        """;
    private const string Zoom = """
        {"id":"b","kind":"zoom","shortestFocalLengthMm":8,"longestFocalLengthMm":24,"apparentFieldAtShortestDeg":60,"apparentFieldAtLongestDeg":42,
         "eyeReliefMm":15,"barrel":"1.25in","price":99}
        """;
    private const string Telescope = """{"id":"t","apertureMm":203,"focalLengthMm":1218,"focuserBarrel":"2in"}""";

    [Fact]
    public void The_demo_catalogue_gives_no_cause_but_what_it_leaves_out_on_purpose() => Assert.Equal(
        ["/items/0/eyeReliefMm assumed-eye-relief", "/items/3/apparentFieldDeg assumed-apparent-field"],
        Check(ReadCsv.Demo));

    [Theory]
    [InlineData("apparentFieldDeg", "/items/0/apparentFieldDeg assumed-apparent-field")]
    [InlineData("eyeReliefMm", "/items/0/eyeReliefMm assumed-eye-relief")]
    public void A_figure_that_must_be_assumed_is_told(string field, string warning) => Assert.Equal([warning], CodesOf(Eyepiece, (field, null)));

    [Fact]
    public void A_figure_that_must_be_assumed_of_what_is_packed_with_a_telescope_is_told()
    {
        const string packed = """
            {"currency":"EUR","items":[],"telescopes":[{"id":"t","apertureMm":203,"focalLengthMm":1218,"focuserBarrel":"2in","included":[
              {"id":"x","kind":"eyepiece","focalLengthMm":24,"apparentFieldDeg":64,"eyeReliefMm":15,"barrel":"1.25in"},
              {"id":"y","kind":"eyepiece","focalLengthMm":10,"apparentFieldDeg":50,"barrel":"1.25in"}]}]}
            """;

        Assert.Equal(["/telescopes/0/included/1/eyeReliefMm assumed-eye-relief"], Check(JsonElement.Parse(packed)));
    }

    /// <summary>The inner diameters of barrels, 28 and 47 mm with 1 mm of grace: common practice, no source.</summary>
    [Theory]
    [InlineData("1.25in", 29, false)]
    [InlineData("1.25in", 29.1, true)]
    [InlineData("2in", 48, false)]
    [InlineData("2in", 48.1, true)]
    [InlineData("0.965in", 22, false)]
    [InlineData("0.965in", 22.1, true)]
    public void A_field_stop_wider_than_the_barrel_is_seen(string barrel, double stop, bool warned) => Assert.Equal(
        warned,
        CodesOf(Eyepiece, ("barrel", barrel), ("fieldStopMm", stop), ("focalLengthMm", 30), ("apparentFieldDeg", stop / 30 * 57))
            .Contains("/items/0/fieldStopMm field-stop-wider-than-barrel"));

    /// <summary>27 mm at 24 mm are 58.7 to 64.5 degrees, by the distortion.</summary>
    [Theory]
    [InlineData(50, false)]
    [InlineData(49, true)]
    [InlineData(64.5, false)]
    [InlineData(74, false)]
    [InlineData(75, true)]
    public void A_field_that_the_field_stop_contradicts_is_seen(double field, bool warned) => Assert.Equal(
        warned, CodesOf(Eyepiece, ("apparentFieldDeg", field)).Contains("/items/0/fieldStopMm field-stop-contradicts-apparent-field"));

    [Theory]
    [InlineData(40, 43, false)]
    [InlineData(40, 52, true)]
    [InlineData(32, 52, false)]
    public void A_field_that_the_barrel_cannot_hold_is_seen(double focalLength, double field, bool warned) => Assert.Equal(
        warned,
        CodesOf(Eyepiece, ("fieldStopMm", null), ("focalLengthMm", focalLength), ("apparentFieldDeg", field))
            .Contains("/items/0/apparentFieldDeg apparent-field-wider-than-barrel"));

    [Fact]
    public void The_field_of_a_zoom_is_looked_at_too()
    {
        Assert.Empty(CodesOf(Zoom));
        Assert.Equal(
            ["/items/0/apparentFieldAtLongestDeg apparent-field-wider-than-barrel", "/items/0/apparentFieldAtLongestDeg zoom-fields-swapped"],
            CodesOf(Zoom, ("apparentFieldAtLongestDeg", 82)));
    }

    [Fact]
    public void A_price_of_zero_is_seen() => Assert.Equal(["/items/0/price price-of-zero"], CodesOf(Eyepiece, ("price", 0)));

    [Fact]
    public void Items_alike_but_for_the_id_are_seen()
    {
        Assert.Equal(["/items/1 alike-items"], Check(Catalogue("EUR", Eyepiece, With(Eyepiece, ("id", "z")))));
        Assert.Equal(["/items/1/gtin same-gtin"], Check(Catalogue("EUR", Eyepiece, With(Eyepiece, ("id", "z"), ("price", 98)))));
        Assert.Empty(Check(Catalogue("EUR", Eyepiece, With(Eyepiece, ("id", "z"), ("gtin", "96385074")))));
    }

    [Theory]
    [InlineData("EUR", false)]
    [InlineData("JPY", false)]
    [InlineData("EUK", true)]
    public void A_currency_that_is_none_is_seen(string currency, bool warned) =>
        Assert.Equal(warned ? ["/currency unknown-currency"] : [], Check(Catalogue(currency, Eyepiece)));

    [Fact]
    public void Swapped_aperture_and_focal_length_are_seen()
    {
        var catalogue = JsonNode.Parse(Catalogue("EUR").GetRawText())!;
        catalogue["telescopes"] =
            new JsonArray(JsonNode.Parse(Telescope), JsonNode.Parse(With(Telescope, ("id", "u"), ("apertureMm", 1218), ("focalLengthMm", 203))));

        Assert.Equal(["/telescopes/1/focalLengthMm focal-ratio-too-fast"], Check(JsonElement.Parse(catalogue.ToJsonString())));
    }

    [Fact]
    public void Every_code_has_its_sentence() =>
        Assert.Equal(
            WarningCode.All.Order(StringComparer.Ordinal),
            Language.English.Sentences.Keys.Select(key => key.Split('/')).Where(parts => parts[0] == "warning").Select(parts => parts[1]).Distinct()
                .Order(StringComparer.Ordinal));

    [Fact]
    public void Every_warning_can_be_said_in_every_language()
    {
        var warnings = new WarningList();
        Read(
            Catalogue(
                "XXX", With(Eyepiece, ("fieldStopMm", 40)), With(Eyepiece, ("id", "x"), ("fieldStopMm", null), ("focalLengthMm", 60), ("price", 0)),
                With(Zoom, ("apparentFieldAtLongestDeg", 82)), With(Zoom, ("id", "y"), ("apparentFieldAtLongestDeg", 82))), warnings);
        var columns = ReadCsv.Of("id,kind,price,barrel,Prise,warehouse,\n,,,,,,").Warnings.Shown;

        Assert.Equal(11, warnings.Shown.Concat(columns).Select(warning => warning.Text.Key).Distinct().Count());
        Assert.All(
            warnings.Shown.Concat(columns), warning => Assert.All(Language.All, language => Assert.Matches(@"^[^{}\s][^{}]*[.?]$", warning.Text.In(language))));
    }

    [Fact]
    public void More_warnings_than_are_shown_are_counted()
    {
        var warnings = new WarningList();
        Read(
            Catalogue("EUR", [.. Enumerable.Range(0, WarningList.MostShown + 7).Select(i => With(Eyepiece, ("id", $"i{i}"), ("gtin", $"{i}"), ("price", 0)))]),
            warnings);

        Assert.Equal((WarningList.MostShown, 7), (warnings.Shown.Count, warnings.More));
    }

    private static string[] CodesOf(string item, params (string Name, object? Value)[] changes) => Check(Catalogue("EUR", With(item, changes)));

    private static JsonElement Catalogue(string currency, params string[] items) =>
        JsonElement.Parse($$"""{ "currency": "{{currency}}", "items": [ {{string.Join(',', items)}} ] }""");

    private static string With(string json, params (string Name, object? Value)[] changes)
    {
        var node = JsonNode.Parse(json)!;
        foreach (var (name, value) in changes)
        {
            node[name] = value is null ? null : JsonValue.Create(value);
        }

        return node.ToJsonString();
    }

    private static string[] Check(JsonElement catalogue)
    {
        var warnings = new WarningList();
        Read(catalogue, warnings);
        return [.. warnings.Shown.Select(warning => $"{warning.Pointer} {warning.Code}")];
    }

    private static void Read(JsonElement catalogue, WarningList warnings)
    {
        var faults = new Faults();
        var request = CatalogueShapes.Stored.Read(catalogue, RequestPointer.Root, faults);
        Assert.Empty(faults.Shown);
        CatalogueChecks.Check(request!, RequestPointer.Root, warnings);
    }
}
