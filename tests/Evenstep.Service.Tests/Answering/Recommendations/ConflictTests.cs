using System.Globalization;
using Evenstep.Planning.Tests.Oracle;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Answering.Recommendations;

/// <summary>What a person reads who asked for what cannot be had.</summary>
public sealed class ConflictTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/recommendations";
    private const int FirstSeed = 570_000;
    private const int ProblemsPerBatch = 125;

    [Theory]
    [InlineData(
        "en",
        "No set within the limits (budget EUR 120.00, purchases 1, Barlows 1, repetitions 0) shows 3° at once; any one of these would do: " +
        "a budget of EUR 186.00 or a view of 1.5° instead of 3°.")]
    [InlineData(
        "de",
        "Innerhalb der Grenzen (Budget 120,00 EUR, Käufe 1, Barlowlinsen 1, Doppelungen 0) zeigt keine Zusammenstellung 3° auf einmal; " +
        "eines davon würde genügen: ein Budget von 186,00 EUR oder ein wahres Gesichtsfeld von 1,5° statt 3°.")]
    public async Task The_sentence_names_the_limits_and_what_would_do(string language, string text)
    {
        var answer = await service.PostAsync(Path, """
            {
              "telescopes": [ { "apertureMm": 80, "focalLengthMm": 400, "focuserBarrel": "2in" } ],
              "catalogue": { "currency": "EUR", "items": [
                { "id": "wide", "kind": "eyepiece", "focalLengthMm": 20, "apparentFieldDeg": 60, "eyeReliefMm": 16, "barrel": "1.25in", "price": 186 },
                { "id": "narrow", "kind": "eyepiece", "focalLengthMm": 10, "apparentFieldDeg": 60, "eyeReliefMm": 16, "barrel": "1.25in", "price": 50 }
              ] },
              "limits": { "budget": 120, "maxPurchases": 1 },
              "preferences": { "mustFrame": [ { "widthDeg": 3 } ] }
            }
            """, language: language);

        Assert.Equal([text], DemandsOf(answer.As<Recommendation>()).Select(demand => demand.Text));
    }

    [Theory]
    [InlineData(
        "en",
        "No set within the limits (budget EUR 500.00, for a single item at most EUR 100.00 and 300 g, purchases 3, Barlows 1, " +
        "repetitions 0) shows 3° at once; any one of these would do: a limit of EUR 186.00 for a single item or a view of 2.98° instead of 3°.",
        "Allowing a single item to cost EUR 186.00 alone would make it possible.")]
    [InlineData(
        "de",
        "Innerhalb der Grenzen (Budget 500,00 EUR, je Teil höchstens 100,00 EUR und 300 g, Käufe 3, Barlowlinsen 1, " +
        "Doppelungen 0) zeigt keine Zusammenstellung 3° auf einmal; eines davon würde genügen: " +
        "eine Grenze von 186,00 EUR je Teil oder ein wahres Gesichtsfeld von 2,98° statt 3°.",
        "Wenn ein einzelnes Teil 186,00 EUR kosten dürfte, würde das allein schon genügen.")]
    public async Task What_one_item_may_cost_and_weigh_is_named_where_that_is_the_conflict(string language, string text, string note)
    {
        var answer = await service.PostAsync(Path, """
            {
              "telescopes": [ { "apertureMm": 80, "focalLengthMm": 400, "focuserBarrel": "2in" } ],
              "catalogue": { "currency": "EUR", "items": [
                { "id": "dear", "kind": "eyepiece", "focalLengthMm": 20, "apparentFieldDeg": 60, "eyeReliefMm": 16, "barrel": "1.25in", "price": 186,
                  "massGrams": 200 },
                { "id": "dear-and-heavy", "kind": "eyepiece", "focalLengthMm": 22, "apparentFieldDeg": 60, "eyeReliefMm": 16, "barrel": "1.25in", "price": 120,
                  "massGrams": 400 },
                { "id": "narrow", "kind": "eyepiece", "focalLengthMm": 19.9, "apparentFieldDeg": 60, "eyeReliefMm": 16, "barrel": "1.25in", "price": 50 }
              ] },
              "limits": { "budget": 500, "maxPricePerItem": 100, "maxItemMassGrams": 300 },
              "preferences": { "mustFrame": [ { "widthDeg": 3 } ] }
            }
            """, language: language);

        var advice = answer.As<Recommendation>();
        var nearest = advice.Conflicts!.Nearest;
        Assert.Equal([text], DemandsOf(answer.As<Recommendation>()).Select(demand => demand.Text));
        Assert.Contains(advice.Notes, one => one.Text == note);
        Assert.Equal("186.00", Reading.Text(nearest.MaxPricePerItem));
        Assert.Null(nearest.MaxItemMassGrams);
    }

    [Theory]
    [InlineData(200.04, 200.1)]
    [InlineData(200.1, 200.1)]
    public async Task A_mass_that_would_do_is_not_rounded_below_what_does(double massGrams, double said)
    {
        var answer = await service.PostAsync(Path, $$"""
            {
              "telescopes": [ { "apertureMm": 80, "focalLengthMm": 400, "focuserBarrel": "2in" } ],
              "catalogue": { "currency": "EUR", "items": [
                { "id": "heavy", "kind": "eyepiece", "focalLengthMm": 20, "apparentFieldDeg": 60, "eyeReliefMm": 16, "barrel": "1.25in", "price": 50,
                  "massGrams": {{massGrams.ToString(CultureInfo.InvariantCulture)}} }
              ] },
              "limits": { "budget": 500, "maxItemMassGrams": 150 },
              "preferences": { "mustFrame": [ { "widthDeg": 3 } ] }
            }
            """);

        var note = answer.As<Recommendation>().Notes.Single(one => one.Code == "larger-max-item-mass-helps");
        Assert.Equal(said, note.Values.GetProperty("maxItemMassGrams").GetDouble());
        Assert.Equal($"Allowing a single item to weigh {said.ToString(CultureInfo.InvariantCulture)} g alone would make it possible.", note.Text);
    }

    [Fact]
    public async Task Nothing_is_said_to_do_alone_where_nothing_does()
    {
        var answer = await service.PostAsync(Path, """
            {
              "telescopes": [ { "apertureMm": 80, "focalLengthMm": 400, "focuserBarrel": "2in" } ],
              "catalogue": { "currency": "EUR", "items": [] },
              "limits": { "budget": 120 },
              "preferences": { "reticle": { "leastPower": 100 } }
            }
            """);

        Assert.Equal(
            [
                "No set within the limits (budget EUR 120.00, purchases 3, Barlows 1, repetitions 0) has a reticle eyepiece that gives 100x; " +
                "changing one of them alone would not do."
            ],
            DemandsOf(answer.As<Recommendation>()).Select(demand => demand.Text));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public async Task Every_sentence_names_every_nearest_value(int batch)
    {
        var values = 0;
        foreach (var seed in Enumerable.Range(FirstSeed + (batch * ProblemsPerBatch), ProblemsPerBatch))
        {
            var answer = (await service.PostAsync(Path, OracleBody.Of(RandomProblems.Make(seed)).ToJsonString())).As<Recommendation>();
            if (answer.Outcome != "infeasible")
            {
                continue;
            }

            string[] expected = [.. NearestInWords(answer.Conflicts!.Nearest)];
            var sentences = DemandsOf(answer).Where(IsDemand).Select(demand => $"seed {seed}: {demand.Text}").ToList();
            Assert.All(sentences, sentence => Assert.All(expected, value => Assert.Contains(value, sentence, StringComparison.Ordinal)));
            values += sentences.Count * expected.Length;
        }

        Assert.True(values > 5, $"only {values} values");
    }

    /// <summary>Not an item that must be bought and is no candidate, which has a sentence of its own.</summary>
    private static bool IsDemand(Remark demand) => demand.Code is "must-include" or "must-frame" or "reticle"
        && demand.Values.TryGetProperty("budget", out _);

    private static IReadOnlyList<Remark> DemandsOf(Recommendation answer) => answer.Conflicts!.Demands;

    private static IEnumerable<string> NearestInWords(NearestLimits nearest)
    {
        (object? Value, string Words)[] limits =
        [
            (nearest.Budget, "a budget of EUR {0:N2}"), (nearest.MaxPurchases, "a limit of {0} on purchases"),
            (nearest.MaxBarlows, "a limit of {0} on Barlows"),
            (nearest.AllowedOverlaps, "a limit of {0} on repetitions"), (nearest.MaxPricePerItem, "a limit of EUR {0:N2} for a single item"),
            (nearest.MaxItemMassGrams, "a limit of {0:0.#} g for a single item"),
        ];
        return limits.Where(limit => limit.Value is not null)
            .Select(limit => string.Format(CultureInfo.InvariantCulture, limit.Words, limit.Value))
            .Concat(nearest.MustFrame.Where(frame => frame.WidthDeg is not null)
                .Select(frame => string.Create(CultureInfo.InvariantCulture, $"a view of {frame.WidthDeg:0.##}°")));
    }
}
