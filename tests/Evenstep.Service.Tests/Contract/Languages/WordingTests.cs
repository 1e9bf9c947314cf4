using System.Text.Json;
using System.Text.Json.Nodes;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Tests;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Tests.Contract.Languages;

public sealed class WordingTests
{
    private const int Problems = 1500;
    private const int FirstSeed = 410_000;

    /// <summary>What only its mass keeps from being bought, which is rare among random problems.</summary>
    private static readonly JsonObject TooHeavy = JsonNode.Parse("""
        {
          "telescopes": [ { "apertureMm": 100, "focalLengthMm": 1000, "focuserBarrel": "1.25in" } ],
          "catalogue": { "currency": "EUR", "items": [
            { "id": "a", "kind": "eyepiece", "focalLengthMm": 25, "apparentFieldDeg": 50, "eyeReliefMm": 16, "barrel": "1.25in", "price": 50, "massGrams": 200 }
          ] },
          "limits": { "budget": 100, "maxItemMassGrams": 150 },
          "preferences": { "mustFrame": [ { "widthDeg": 1 } ] }
        }
        """)!.AsObject();

    /// <summary>A zoom of 25 to 50 times, where the lowest useful power is 31 and 125 is owned.</summary>
    private static readonly JsonObject PastTheLowEnd = JsonNode.Parse("""
        {
          "telescopes": [ { "apertureMm": 100, "focalLengthMm": 1000, "focuserBarrel": "1.25in" } ],
          "owned": [ { "kind": "eyepiece", "focalLengthMm": 8, "apparentFieldDeg": 50, "eyeReliefMm": 16, "barrel": "1.25in" } ],
          "catalogue": { "currency": "EUR", "items": [
            { "id": "a", "kind": "zoom", "shortestFocalLengthMm": 20, "longestFocalLengthMm": 40, "apparentFieldAtShortestDeg": 60,
              "apparentFieldAtLongestDeg": 50, "eyeReliefMm": 16, "barrel": "1.25in", "price": 50 }
          ] },
          "limits": { "budget": 100 },
          "preferences": { "zooms": "allow" }
        }
        """)!.AsObject();

    private static readonly string[] OnlyWhereWorkEnds = ["conflict/remedies/one-known", "conflict/remedies/undecided"];

    /// <summary>Said so rarely that <see cref="AdviceWordingTests"/> says them on purpose.</summary>
    private static readonly string[] Rare =
    [
        "reason/better-views", "reason/better-views/preferred", "reason/reticle/through", "breach/overlap/owned", "conflict/in-telescope",
        "conflict/must-frame/nothing", "conflict/must-frame/nothing/named", "conflict/must-frame/impossible", "conflict/must-frame/impossible/named",
        "conflict/reticle/nothing", "conflict/reticle/impossible", "view/power/zoom", "verdict/not-bought",
        "conflict/no-candidate/fixed", "exclusion/beside", "exclusion/excluded-by-request/zoom", "exclusion/excluded-by-request/zoom/usual",
        "note/wider-view-costs/no-budget", "note/zoom-instead/no-budget",
    ];

    /// <summary>Said to whoever wrote the fields.</summary>
    private static readonly string[] OfFields = ["warning", "problem", "error"];

    private static readonly string[] OftenSaid = ["reason", "exclusion", "conflict", "breach", "verdict", "view"];

    [Fact]
    public void Every_code_has_a_sentence()
    {
        Assert.All(Cautions.Codes, code => Assert.Contains($"caution/{code}", Language.English.Sentences.Keys));
        Assert.All(KitNotes.Codes.Concat(PlanNotes.Codes), code => Assert.Contains($"note/{code}", Language.English.Sentences.Keys));
        Assert.All(Reasons.Codes, code => Assert.Contains($"reason/{code}", Language.English.Sentences.Keys));
        Assert.All(Words<Excluded>.All, code => Assert.Contains($"exclusion/{code}", Language.English.Sentences.Keys));
    }

    [Fact]
    public void A_sentence_is_filled_with_values_as_prose_writes_them()
    {
        var remark = new Remark(Reasons.FillsStep,
        [
            RemarkValue.Power("from", 81.2),
            RemarkValue.Power("to", 203),
            RemarkValue.Power("power", 131.04),
            RemarkValue.Of("withId", null),
            RemarkValue.Of("with", null),
        ]);

        var answer = ReasonWriter.Write(remark, Some.Problem());

        Assert.Equal("Fills the jump from 81x to 203x with 131x.", answer.Text.In(Language.English));
        Assert.Equal("Schließt die Lücke zwischen 81-fach und 203-fach mit 131-facher Vergrößerung.", answer.Text.In(German.Language));
        Assert.Equal(
            """{"from":81.2,"to":203,"power":131,"withId":null,"with":null}""",
            JsonSerializer.Serialize(answer.Values, AnswerJson.OptionsIn(Language.English)));
    }

    [Fact]
    public void Every_language_has_the_same_sentences_with_the_same_slots() => Assert.All(Language.All, language =>
    {
        var english = Language.English.Sentences;
        Assert.Equal(english.Keys.Order(StringComparer.Ordinal), language.Sentences.Keys.Order(StringComparer.Ordinal));
        Assert.All(english, sentence => Assert.Equal(SlotsOf(sentence.Value), SlotsOf(language.Sentences[sentence.Key])));
    });

    [Fact]
    public void No_sentence_names_a_field() => Assert.All(
        Language.All.SelectMany(language => language.Sentences).Where(sentence => !OfFields.Contains(sentence.Key.Split('/')[0])),
        sentence => Assert.DoesNotMatch(@"`|\b[a-z]+[A-Z]\w*\b", Sentence.Slot().Replace(sentence.Value, "")));

    [Fact]
    public void Every_sentence_of_random_plans_can_be_said_in_every_language()
    {
        Sentence[] said = [.. SaidOfPlans.Random(Problems, FirstSeed), .. SaidOfPlans.Of(TooHeavy), .. SaidOfPlans.Of(PastTheLowEnd)];

        Assert.All(said, sentence => Assert.All(Language.All, language => Assert.Matches(@"^[^{}\s][^{}]*\.$", sentence.In(language))));
        Assert.Empty(Language.English.Sentences.Keys.Where(IsOftenSaid)
            .Except(said.SelectMany(SaidOfPlans.WithParts).Select(sentence => sentence.Key)).Except(OnlyWhereWorkEnds).Except(Rare));
    }

    [Theory]
    [InlineData("en", "It costs EUR 1,250.50, more than the EUR 99.00 allowed for one item.")]
    [InlineData("de", "Es kostet 1.250,50 EUR; ein einzelnes Teil darf höchstens 99,00 EUR kosten.")]
    public void Money_is_written_as_the_language_writes_it(string tag, string text) => Assert.Equal(text, Say(tag, "exclusion/over-budget/item",
        RemarkValue.Of("price", 1250.5m), RemarkValue.Of("limit", 99m), RemarkValue.Of(Sentence.Currency, "EUR")));

    [Theory]
    [InlineData("en", "Its eye relief is 7.6 mm; 15 mm is needed.")]
    [InlineData("de", "Der Augenabstand beträgt 7,6 mm; nötig sind 15 mm.")]
    public void Lengths_are_written_as_the_language_writes_them(string tag, string text) => Assert.Equal(text, Say(tag, "exclusion/eye-relief-too-short",
        RemarkValue.Millimetres("eyeReliefMm", 7.6), RemarkValue.Millimetres("neededMm", 15)));

    [Theory]
    [InlineData("en", "1.25in", "Its 1.25in barrel does not fit the focuser.")]
    [InlineData("de", "1.25in", "Die Steckhülse von 1,25 Zoll passt nicht in den Okularauszug.")]
    [InlineData("de", "2in", "Die Steckhülse von 2 Zoll passt nicht in den Okularauszug.")]
    [InlineData("de", "0.965in", "Die Steckhülse von 0,965 Zoll passt nicht in den Okularauszug.")]
    public void Barrels_are_written_as_the_language_writes_them(string tag, string barrel, string text) =>
        Assert.Equal(text, Say(tag, "exclusion/barrel-too-wide", RemarkValue.Of("barrel", barrel)));

    [Theory]
    [InlineData("en", "telescope 2", "Telescope 2: useful powers")]
    [InlineData("de", "telescope 2", "Teleskop 2: Als sinnvoll")]
    [InlineData("de", "telescope two", "telescope two: Als sinnvoll")]
    [InlineData("de", "My telescope 2", "My telescope 2: Als sinnvoll")]
    public void A_name_that_was_made_up_is_in_the_language_and_any_other_stays_as_it_is(string tag, string name, string beginning) => Assert.StartsWith(
        beginning,
        Say(
            tag, "note/range-set-by-barrel", RemarkValue.Of("telescope", name), RemarkValue.Power("lowest", 38), RemarkValue.Power("lowestForEye", 30),
            RemarkValue.Of("barrel", Barrel.Inch125)), StringComparison.Ordinal);

    [Fact]
    public void One_figure_reckoned_in_two_ways_reads_the_same()
    {
        Assert.Equal((1.563, 1.563), (Rounded.Ratio(1.5625), Rounded.Ratio(1.5624999999999998)));
        Assert.Equal(1.562, Rounded.Ratio(1.562499));
    }

    [Fact]
    public void A_step_counts_by_its_ratio_where_every_power_weighs_fully()
    {
        // From 160 to 200 times, exit pupils under 1 mm; squared at the end of the range that is 1.5625.
        var telescope = TelescopeInUse.Of(
            new Telescope("", 100, 1000, Barrel.Inch125), new PowerRange(50, RangeEnd.Request, 200, RangeEnd.Request), []);
        var (from, to) = (telescope.Axis.PositionOf(160), telescope.Axis.Length);
        var jump = new Jump(telescope.Axis.PowerAt(from), telescope.Axis.PowerAt(to), to - from, JumpPlace.HighEnd);

        var step = KitWriter.StepOf(jump, enough: default);

        Assert.Equal((160, 200, 1.563, 1.563), (step.From, step.To, step.Ratio, step.Weighed));
    }

    private static string Say(string tag, string key, params RemarkValue[] values) =>
        new Sentence(key, [.. values]).In(Language.All.Single(language => language.Tag == tag));

    private static IEnumerable<string> SlotsOf(string sentence) => Sentence.Slot().Matches(sentence).Select(slot => slot.Value).Order(StringComparer.Ordinal);

    /// <summary>In the answers to random problems; how a plan may fail to be proved is too rare for them.</summary>
    private static bool IsOftenSaid(string key) => OftenSaid.Contains(key.Split('/')[0]) && key != $"reason/{Reasons.NotProvedNeeded}";
}
