using System.Globalization;
using System.Text.Json.Nodes;
using Evenstep.Benchmarks.Problems;

namespace Evenstep.Benchmarks.Trials;

/// <summary>A request that the contract allows.</summary>
/// <param name="Seed">By which it can be drawn again.</param>
/// <param name="Path">Where it is posted to.</param>
/// <param name="Body">JSON.</param>
/// <param name="Accept">The media type asked for.</param>
internal sealed record DrawnRequest(int Seed, string Path, string Body, string Accept)
{
    /// <summary>What kind of request it is, in a few words: its size and what makes it heavy.</summary>
    public string Summary { get; init; } = "";
}

/// <summary>
/// Draws valid requests over every bound of the contract: to 3000 items, 8 purchases, 4 Barlows, 20 overlaps, 4 telescopes
/// and 100 owned items, with every wish and every explanation. The same seed gives the same request.
/// </summary>
internal sealed class RequestDraw
{
    /// <summary>Stored catalogues that some of the requests name.</summary>
    public static readonly IReadOnlyList<int> StoredSizes = [300, 1000, 3000];

    private static readonly string[] Paths =
    [
        "/v1/recommendations", "/v1/recommendations", "/v1/recommendations", "/v1/second-opinions", "/v1/assessments", "/v1/spending-curves",
        "/v1/buying-paths",
    ];

    private static readonly string[] Interests = ["large-nebulae", "galaxies", "star-clusters", "planetary-nebulae", "moon", "planets", "double-stars"];
    private static readonly string[] Wishes = ["low-price", "wide-field", "long-eye-relief", "light-weight", "parfocal"];
    private static readonly string[] Drawn = ["/v1/recommendations", "/v1/second-opinions", "/v1/assessments"];

    private readonly int seed;
    private readonly Dice dice;
    private readonly CatalogueDraw catalogue;
    private int items;

    /// <summary>Whether eye and air are such that every usual telescope has powers of use.</summary>
    private bool isCalm;

    private RequestDraw(int seed)
    {
        this.seed = seed;
        dice = new Dice(seed, 77);
        catalogue = new CatalogueDraw(dice);
    }

    public static DrawnRequest Draw(int seed) => new RequestDraw(seed).Request();

    /// <summary>The stored catalogue of a size, as it is put to its address.</summary>
    public static (string Path, string Body) Stored(int size) =>
        ($"/v1/catalogues/{StoredName(size)}", InlineCatalogue(new CatalogueDraw(new Dice(size, 5)).Items(new CatalogueMix(size))).ToJsonString());

    private static string StoredName(int size) => string.Create(CultureInfo.InvariantCulture, $"trial-{size}");

    private static JsonObject InlineCatalogue(JsonArray items) => new() { ["currency"] = "EUR", ["items"] = items };

    private DrawnRequest Request()
    {
        var path = dice.Pick(Paths);
        var isAssessment = path == "/v1/assessments";
        var isOpinion = path == "/v1/second-opinions";
        isCalm = dice.Chance(0.6);
        var body = new JsonObject
        {
            ["telescopes"] = List(dice.Int(1, 4), Telescope),
            ["observer"] = Maybe(0.6, Observer),
            ["site"] = Maybe(0.4, () => new JsonObject { ["seeingArcsec"] = Math.Round(dice.Between(0.2, isCalm ? 1.6 : 10), 1) }),
            ["owned"] = Maybe(0.6, Owned),
            ["catalogue"] = Catalogue(),
            ["preferences"] = isAssessment ? Maybe(0.5, AssessmentPreferences) : Maybe(0.8, Preferences),
        };
        if (!isAssessment)
        {
            body["limits"] = Limits();
        }

        if (path == "/v1/recommendations" || isOpinion)
        {
            body["explain"] = Maybe(0.7, Explain);
        }
        else if (isAssessment)
        {
            body["explain"] = Maybe(0.5, () => new JsonObject { ["targets"] = Targets() });
        }

        if (isOpinion)
        {
            body["shoppingList"] = Ids(dice.Int(0, 8));
        }

        return new DrawnRequest(seed, path, body.ToJsonString(), Drawn.Contains(path) && dice.Chance(0.1) ? "image/svg+xml" : "application/json")
        {
            Summary = Summary(body),
        };
    }

    private JsonObject Catalogue()
    {
        items = dice.Chance(0.25) ? 3000 : (int)Math.Exp(dice.Between(Math.Log(3), Math.Log(3000)));
        if (dice.Chance(0.25))
        {
            items = dice.Pick(StoredSizes);
            return new JsonObject { ["id"] = StoredName(items) };
        }

        var barlows = dice.Pick(0.0, 0.04, 0.04, 0.12, 0.4);
        return InlineCatalogue(catalogue.Items(new CatalogueMix(items, barlows, dice.Pick(0.0, 0.04, 0.2), dice.Chance(0.5))));
    }

    private JsonObject Telescope(int number)
    {
        var isUsual = isCalm && dice.Chance(0.85);
        var apertureMm = isUsual ? dice.Int(80, 400) : dice.Int(30, 2000);
        var focalLengthMm = isUsual ? Math.Round(apertureMm * dice.Between(4, 8)) : dice.Int(100, 20_000);
        var telescope = new JsonObject
        {
            ["name"] = $"telescope no. {number}",
            ["apertureMm"] = apertureMm,
            ["focalLengthMm"] = Math.Clamp(focalLengthMm, 100, 20_000),
            ["focuserBarrel"] = isUsual ? dice.Pick("1.25in", "2in", "2in") : dice.Pick("0.965in", "1.25in", "2in"),
        };
        if (!isUsual || dice.Chance(0.1))
        {
            var lowest = dice.Int(1, 300);
            telescope["powerRange"] = new JsonObject { ["lowest"] = lowest, ["highest"] = dice.Int(2 * lowest, 5000) };
        }

        return telescope;
    }

    private JsonObject Observer() => new()
    {
        ["age"] = dice.Chance(0.5) ? dice.Int(5, isCalm ? 60 : 110) : null,
        ["pupilMm"] = dice.Chance(0.3) ? Math.Round(dice.Between(isCalm ? 5 : 1, 9), 1) : null,
        ["wearsSpectacles"] = dice.Chance(0.3),
        ["astigmatismDioptres"] = dice.Chance(0.3) ? Math.Round(dice.Between(-6, 6), 2) : null,
        ["leastEyeReliefMm"] = dice.Chance(0.2) ? dice.Int(0, 20) : null,
        ["observes"] = new JsonArray([.. Interests.Where(_ => dice.Chance(0.3)).Select(interest => (JsonNode)interest)]),
    };

    private JsonArray Owned()
    {
        var barlows = dice.Pick(0.0, 0.2, 0.8);
        var count = dice.Chance(0.2) ? 100 : dice.Int(0, 12);
        return new JsonArray(
            [.. Enumerable.Range(0, count).Select(_ => (JsonNode)(dice.Chance(barlows) ? catalogue.Barlow(threeFactors: true) : catalogue.Eyepiece()))]);
    }

    private JsonObject Limits() => new()
    {
        ["budget"] = dice.Chance(0.1) ? 1_000_000 : dice.Int(0, 3000),
        ["maxPurchases"] = dice.Int(0, 8),
        ["maxBarlows"] = dice.Int(0, 4),
        ["maxPricePerItem"] = dice.Chance(0.2) ? dice.Int(20, 400) : null,
        ["maxItemMassGrams"] = dice.Chance(0.2) ? dice.Int(50, 900) : null,
        ["allowedOverlaps"] = dice.Chance(0.5) ? 0 : dice.Int(0, 20),
    };

    private JsonObject AssessmentPreferences() => new()
    {
        ["leastStep"] = Math.Round(dice.Between(1, 1.5), 2),
        ["enoughStep"] = dice.Chance(0.3) ? 1 : Math.Round(dice.Between(1, 4), 2),
        ["leastApparentFieldDeg"] = dice.Chance(0.3) ? dice.Int(10, 80) : null,
        ["mustFrame"] = List(dice.Chance(0.5) ? 0 : dice.Int(1, 20), Demand),
    };

    private JsonObject Preferences()
    {
        var preferences = AssessmentPreferences();
        preferences["mustFrame"] = List(dice.Chance(0.7) ? 0 : dice.Int(1, 4), Demand);
        preferences["prefer"] = dice.Pick(Wishes);
        preferences["barlows"] = dice.Chance(0.85) ? "allow" : "avoid";
        preferences["zooms"] = dice.Chance(0.5) ? "allow" : "avoid";
        preferences["mustInclude"] = Ids(dice.Chance(0.8) ? 0 : dice.Int(1, 3));
        preferences["exclude"] = Ids(dice.Chance(0.8) ? 0 : dice.Int(1, 200));
        preferences["reticle"] = dice.Chance(0.1) ? new JsonObject { ["leastPower"] = dice.Int(1, 300) } : null;
        return preferences;
    }

    private JsonObject Explain() => new()
    {
        ["ifUnavailable"] = dice.Chance(0.4),
        ["excluded"] = dice.Chance(0.3) ? "list" : "count",
        ["targets"] = Targets(),
        ["certify"] = dice.Chance(0.4),
    };

    private JsonNode Targets() => dice.Int(0, 2) switch
    {
        0 => false,
        1 => true,
        _ => List(dice.Int(1, 100), number => new JsonObject
        {
            ["name"] = $"target {number}",
            ["widthArcmin"] = Math.Round(dice.Between(0.01, 1200), 2),
            ["wantedExitPupilMm"] = Math.Round(dice.Between(0.1, 9), 1),
        }),
    };

    private JsonObject Demand(int number) => new()
    {
        ["name"] = $"demand {number}",
        ["widthDeg"] = dice.Chance(0.9) ? Math.Round(dice.Between(0.05, 1.5), 2) : Math.Round(dice.Between(0.01, 20), 2),
        ["telescope"] = dice.Chance(0.3) ? "telescope no. 1" : null,
    };

    private JsonArray Ids(int count) =>
        new([.. Enumerable.Range(0, count).Select(_ => dice.Int(0, items - 1)).Distinct().Select(number => (JsonNode)$"item-{number}")]);

    private JsonObject? Maybe(double chance, Func<JsonObject> make) => dice.Chance(chance) ? make() : null;

    private JsonArray? Maybe(double chance, Func<JsonArray> make) => dice.Chance(chance) ? make() : null;

    private static JsonArray List(int count, Func<int, JsonObject> make) => new([.. Enumerable.Range(1, count).Select(number => (JsonNode)make(number))]);

    private string Summary(JsonObject body)
    {
        var limits = body["limits"] as JsonObject;
        var explain = body["explain"] as JsonObject;
        string[] extras =
        [
            .. explain?["certify"] is JsonValue certify && certify.GetValue<bool>() ? ["certify"] : Array.Empty<string>(),
            .. explain?["ifUnavailable"] is JsonValue unavailable && unavailable.GetValue<bool>() ? ["ifUnavailable"] : Array.Empty<string>(),
        ];
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{items} items, {(body["telescopes"] as JsonArray)?.Count} telescopes, {(body["owned"] as JsonArray)?.Count ?? 0} owned, " +
            $"{limits?["maxPurchases"] ?? "no"} purchases, {limits?["maxBarlows"] ?? "no"} Barlows {string.Join(' ', extras)}").TrimEnd();
    }
}
