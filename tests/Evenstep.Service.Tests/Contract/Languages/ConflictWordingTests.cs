using System.Collections.Immutable;
using System.Text.Json;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Features.ProductPages;
using Evenstep.Service.Features.SecondOpinions;

namespace Evenstep.Service.Tests.Contract.Languages;

/// <summary>What is said where something cannot be had, or would not be bought, word for word.</summary>
public sealed class ConflictWordingTests
{
    private const string Loop = """{ "name": "loop", "widthDeg": 3 }""";
    private const string OneDegree = """{ "widthDeg": 1 }""";

    private static readonly Nearest<int> NoCount = Nearest.None<int>();
    private static readonly Nearest<double> NoWidth = Nearest.None<double>();

    [Theory]
    [InlineData("en", "No purchases within your limits show 1° at once; this alone would do: a budget of EUR 50.00.")]
    [InlineData("de", "Innerhalb Ihrer Grenzen zeigt keine Zusammenstellung 1° auf einmal; das allein würde genügen: ein Budget von 50,00 EUR.")]
    public void A_wish_that_limits_are_in_the_way_of_says_what_would_do(string tag, string text)
    {
        var asked = Asking(OneDegree);

        Assert.Equal([text], Said(asked, tag, Against(asked, 50m, 0)));
        Assert.Contains("With a budget of EUR 50.00, and all else as it is, everything you asked for can be had.", Notes(asked, Against(asked, 50m, 0)));
    }

    [Theory]
    [InlineData(
        "en",
        "Nothing that you own or could buy shows “loop” (3°) at once, whatever the limits; 1.25° is the most.",
        "You own no reticle eyepiece that fits, and none is for sale that could give 100x.",
        "No purchases within your limits show 1° at once.")]
    [InlineData(
        "de",
        "Weder Ihre Ausrüstung noch etwas Käufliches zeigt „loop“ (3°) auf einmal, wie weit die Grenzen auch wären; mehr als 1,25° sind nicht zu haben.",
        "Sie haben kein passendes Fadenkreuzokular, und keines ist zu haben, das 100-fache Vergrößerung geben könnte.",
        "Innerhalb Ihrer Grenzen zeigt keine Zusammenstellung 1° auf einmal.")]
    public void Each_of_several_impossible_wishes_is_named_and_no_remedy_is_promised_that_is_none(string tag, params string[] texts)
    {
        var asked = Asking($"{Loop}, {OneDegree}", """{ "leastPower": 100 }""");

        Assert.Equal(texts, Said(asked, tag, Against(asked, 50m, 1)));
    }

    [Fact]
    public void To_change_several_limits_is_advised_only_where_limits_are_to_blame()
    {
        var (limited, impossible) = (Asking(OneDegree), Asking(Loop));

        Assert.Equal(
            ["No change of a single limit makes it possible: change several limits, or give up one of the wishes named."],
            Notes(limited, Against(limited, null, 0)));
        Assert.Equal(["No change of a single limit makes it possible: give up, or change, what is named."], Notes(impossible, Against(impossible, null, 0)));
    }

    [Theory]
    [InlineData("en", "You asked for Plain, but it does not qualify: It costs EUR 50.00, more than the budget of EUR 40.00. Change that, or do without it.")]
    [InlineData(
        "de",
        "Plain soll dabei sein, kommt aber nicht infrage: Es kostet 50,00 EUR, mehr als das Budget von 40,00 EUR. "
        + "Ändern Sie das, oder verzichten Sie darauf.")]
    public void What_must_be_bought_and_cannot_be_says_why(string tag, string text)
    {
        var asked = Asking(OneDegree);
        var conflicts = Against(asked, 50m, 0) with { NoCandidates = [new Exclusion(asked.Catalogue.Items["plain"], Excluded.OverBudget)], Together = [] };

        Assert.Equal([text], Said(asked, tag, conflicts));
    }

    [Theory]
    [InlineData(
        "en",
        "You asked for Barrel, but it does not qualify: Its 2in barrel does not fit the focuser. It costs EUR 95.00, more than the budget of EUR 40.00. "
        + "It weighs 700 g, more than the 500 g allowed for one item. Do without it.")]
    [InlineData(
        "de",
        "Barrel soll dabei sein, kommt aber nicht infrage: Die Steckhülse von 2 Zoll passt nicht in den Okularauszug. "
        + "Es kostet 95,00 EUR, mehr als das Budget von 40,00 EUR. Es wiegt 700 g; ein einzelnes Teil darf höchstens 500 g wiegen. Verzichten Sie darauf.")]
    public void What_cannot_be_changed_comes_first_and_what_else_is_against_it_beside_the_reason(string tag, string text)
    {
        var asked = Asking(OneDegree);
        var conflicts = Against(asked, 50m, 0) with { NoCandidates = [new Exclusion(asked.Catalogue.Items["barrel"], Excluded.OverBudget)], Together = [] };

        Assert.Equal([text], Said(asked, tag, conflicts));
        Assert.Equal("over-budget", ConflictWriter.Write(asked, conflicts).Demands[0].Code);
    }

    [Theory]
    [InlineData("en", "Bought now, it would overlap what you have already: your 20 mm eyepiece (50x) and Wide (50x).")]
    [InlineData("de", "Jetzt gekauft, würde es doppeln, was Sie schon haben: Ihr 20-mm-Okular (50-fach) und Wide (50-fach).")]
    public void What_would_overlap_is_named(string tag, string text)
    {
        var asked = Asking("", owned: """{ "kind": "eyepiece", "focalLengthMm": 20, "apparentFieldDeg": 50, "eyeReliefMm": 16, "barrel": "1.25in" }""");

        Assert.Equal(text, ExclusionDetail.Of(asked, new Exclusion(asked.Catalogue.Items["wide"], Excluded.OverlapsOwned)).Text.In(LanguageOf(tag)));
    }

    [Theory]
    [InlineData("null", "Zooms are left out unless asked for.")]
    [InlineData("\"avoid\"", "You ruled zooms out.")]
    public void Zooms_are_ruled_out_only_by_who_said_so(string zooms, string text)
    {
        var asked = Asking("", zooms: zooms);

        Assert.Equal(text, ExclusionDetail.Of(asked, new Exclusion(asked.Catalogue.Items["zoom"], Excluded.ByRequest)).Text.In(Language.English));
    }

    [Theory]
    [InlineData(1.2599, "1.25° is the most")]
    [InlineData(1.25, "1.25° is the most")]
    public void The_most_that_can_be_framed_is_rounded_down_so_that_it_can_be_asked_for(double fieldStopDeg, string part)
    {
        var asked = Asking(Loop, wideFieldDeg: fieldStopDeg * 50);

        Assert.Contains(part, Said(asked, "en", Against(asked, null, 0)).Single(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(
        "en", "Shows 1.25° at 50x; the widest so far is 1°. A recommendation would not buy it, though: your 20 mm eyepiece (50x) and Wide (50x) overlap.")]
    [InlineData(
        "de",
        "Zeigt bei 50-facher Vergrößerung ein wahres Gesichtsfeld von 1,25°; das größte ist bisher 1°. "
        + "Empfohlen würde es trotzdem nicht: Ihr 20-mm-Okular (50-fach) und Wide (50-fach) doppeln sich.")]
    public void A_verdict_says_that_a_recommendation_would_not_buy_it(string tag, string text)
    {
        var asked = Asking("", owned: """{ "kind": "eyepiece", "focalLengthMm": 20, "apparentFieldDeg": 50, "eyeReliefMm": 16, "barrel": "1.25in" }""");

        Assert.Equal(text, MatchWriter.Write(asked, asked.Catalogue.Items["wide"]).Verdict.Text.In(LanguageOf(tag)));
    }

    [Theory]
    [InlineData("en", "Plain is on the list, but you have it already (telescope 1; overlaps: 1, allowed: 0).")]
    [InlineData("de", "Plain steht auf der Liste, gehört Ihnen aber schon (Teleskop 1; Doppelungen: 1, erlaubt: 0).")]
    public void A_listed_item_that_is_owned_is_said_to_be_owned(string tag, string text)
    {
        var asked = Asking("", owned: """{ "id": "plain" }""");
        var kit = Kit.Of(asked.Problem, [asked.Catalogue.Items["plain"]]);

        Assert.Equal([text], BreachWriter.Write(new Breach.Overlaps(1, 0), kit, asked.Catalogue).Select(breach => breach.Text.In(LanguageOf(tag))));
    }

    private static IEnumerable<string> Said(RecommendationAsked asked, string tag, Conflicts conflicts) =>
        ConflictWriter.Write(asked, conflicts).Demands.Select(demand => demand.Text.In(LanguageOf(tag)));

    private static IEnumerable<string> Notes(RecommendationAsked asked, Conflicts conflicts) =>
        Remedies.Of(asked, conflicts).Select(remark => Phrase.Of("note", remark).Text.In(Language.English));

    /// <summary>Of what must be framed the one with this index conflicts, and a budget would help, or nothing.</summary>
    private static Conflicts Against(RecommendationAsked asked, decimal? budget, int index)
    {
        ImmutableArray<FramingDemand> framings = asked.Problem.Demands.MustFrame;
        var nearest = new NearestLimits(
            budget is { } amount ? amount : Nearest.None<decimal>(), NoCount, NoCount, NoCount, [.. framings.Select(_ => NoWidth)]);
        return new Conflicts([], [new Demand.MustFrame(framings[index], index)], IsTogetherDecided: true, nearest);
    }

    private static RecommendationAsked Asking(
        string mustFrame, string reticle = "null", string owned = "", string zooms = "null", double wideFieldDeg = 62.5)
    {
        using var body = JsonDocument.Parse($$"""
            {
              "telescopes": [ { "apertureMm": 100, "focalLengthMm": 1000, "focuserBarrel": "1.25in" } ],
              "owned": [ {{owned}} ],
              "catalogue": { "currency": "EUR", "items": [
                { "id": "plain", "name": "Plain", "price": 50,
                  "kind": "eyepiece", "focalLengthMm": 25, "apparentFieldDeg": 50, "eyeReliefMm": 16, "barrel": "1.25in" },
                { "id": "wide", "name": "Wide", "price": 90,
                  "kind": "eyepiece", "focalLengthMm": 20, "apparentFieldDeg": {{JsonSerializer.Serialize(wideFieldDeg)}},
                  "eyeReliefMm": 16, "barrel": "1.25in" },
                { "id": "barrel", "name": "Barrel", "price": 95, "massGrams": 700,
                  "kind": "eyepiece", "focalLengthMm": 30, "apparentFieldDeg": 70, "eyeReliefMm": 16, "barrel": "2in" },
                { "id": "zoom", "name": "Zoom", "price": 30, "kind": "zoom", "shortestFocalLengthMm": 8, "longestFocalLengthMm": 24,
                  "apparentFieldAtShortestDeg": 60, "apparentFieldAtLongestDeg": 50, "eyeReliefMm": 16, "barrel": "1.25in" }
              ] },
              "limits": { "budget": 40, "maxItemMassGrams": 500 },
              "preferences": { "mustFrame": [ {{mustFrame}} ], "reticle": {{reticle}}, "zooms": {{zooms}} }
            }
            """);
        var faults = new Faults();
        return RecommendationReader.Read(body.RootElement, CatalogueSnapshot.WithDemo(), faults)
            ?? throw new InvalidDataException(string.Join("; ", faults.Shown));
    }

    private static Language LanguageOf(string tag) => Language.All.Single(language => language.Tag == tag);
}
