using System.Globalization;
using Evenstep.Planning.Tests.Oracle;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Answering.Recommendations;

/// <summary>What a person reads who asked for what cannot be had.</summary>
public sealed class ConflictTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/recommendations";
    private const int FirstSeed = 570_000;
    private const int ProblemsPerBatch = 300;

    [Theory]
    [InlineData("en", "No purchases within your limits show 3° at once; any one of these would do: a budget of EUR 186.00 or a view of 1.5° instead of 3°.")]
    [InlineData(
        "de",
        "Innerhalb Ihrer Grenzen zeigt keine Zusammenstellung 3° auf einmal; "
        + "eines davon würde genügen: ein Budget von 186,00 EUR oder ein wahres Gesichtsfeld von 1,5° statt 3°.")]
    public async Task The_sentence_names_what_would_do(string language, string text)
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
        "No purchases within your limits show 3° at once; any one of these would do: up to EUR 186.00 for a single item or a view of 2.98° instead of 3°.",
        "If a single item may cost EUR 186.00, and all else is as it is, everything you asked for can be had.")]
    [InlineData(
        "de",
        "Innerhalb Ihrer Grenzen zeigt keine Zusammenstellung 3° auf einmal; "
        + "eines davon würde genügen: bis zu 186,00 EUR je Teil oder ein wahres Gesichtsfeld von 2,98° statt 3°.",
        "Wenn ein einzelnes Teil 186,00 EUR kosten darf und sonst alles bleibt, ist alles Gewünschte zu haben.")]
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
        Assert.Equal(
            $"If a single item may weigh {said.ToString(CultureInfo.InvariantCulture)} g, and all else is as it is, everything you asked for can be had.",
            note.Text);
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
            ["You own no reticle eyepiece that fits, and none is for sale that could give 100x."],
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
            if (answer.Outcome != "infeasible" || !DemandsOf(answer).All(IsDemand))
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

    /// <summary>Not an item that must be bought and is no candidate, nor what cannot be had whatever the limits: these have sentences of
    /// their own, and leave no single change that would do.</summary>
    private static bool IsDemand(Remark demand) => demand.Code is "must-include" or "must-frame" or "reticle"
        && demand.Values.TryGetProperty("budget", out _);

    private static IReadOnlyList<Remark> DemandsOf(Recommendation answer) => answer.Conflicts!.Demands;

    private static IEnumerable<string> NearestInWords(NearestLimits nearest)
    {
        (object? Value, string Words)[] limits =
        [
            (nearest.Budget, "a budget of EUR {0:N2}"), (nearest.MaxPurchases, "up to {0} purchases"), (nearest.MaxBarlows, "up to {0} Barlows"),
            (nearest.AllowedOverlaps, "up to {0} overlaps"), (nearest.MaxPricePerItem, "up to EUR {0:N2} for a single item"),
            (nearest.MaxItemMassGrams, "up to {0:0.#} g for a single item"),
        ];
        return limits.Where(limit => limit.Value is not null)
            .Select(limit => string.Format(CultureInfo.InvariantCulture, limit.Words, limit.Value))
            .Concat(nearest.MustFrame.Where(frame => frame.WidthDeg is not null)
                .Select(frame => string.Create(CultureInfo.InvariantCulture, $"a view of {frame.WidthDeg:0.##}°")));
    }
}
