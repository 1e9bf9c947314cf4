using System.Text.Json;
using System.Text.Json.Nodes;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Service.Tests.Answers;

/// <summary>Writes one of the exhaustive solver's problems as a caller would: nothing that has a default, if it is not given.</summary>
internal static class OracleBody
{
    public static JsonObject Of(OracleProblem problem) => new()
    {
        ["telescopes"] = List(problem.Telescopes, TelescopeOf),
        ["observer"] = ObserverOf(problem.Observer),
        ["site"] = new JsonObject { ["seeingArcsec"] = problem.SeeingArcsec },
        ["owned"] = List(problem.Owned, OwnedOf),
        ["catalogue"] = new JsonObject { ["currency"] = "EUR", ["items"] = List(problem.Catalogue, ForSale) },
        ["limits"] = LimitsOf(problem.Limits),
        ["preferences"] = PreferencesOf(problem.Preferences),
        ["explain"] = new JsonObject { ["excluded"] = "list" },
    };

    private static JsonObject TelescopeOf(OracleTelescope telescope)
    {
        var json = new JsonObject
        {
            ["name"] = telescope.Name,
            ["apertureMm"] = telescope.ApertureMm,
            ["focalLengthMm"] = telescope.FocalLengthMm,
            ["focuserBarrel"] = Word(telescope.FocuserBarrel),
        };
        if (telescope is { LowestPower: not null } or { HighestPower: not null })
        {
            json["powerRange"] = new JsonObject { ["lowest"] = telescope.LowestPower, ["highest"] = telescope.HighestPower };
        }

        return json;
    }

    private static JsonObject ObserverOf(OracleObserver observer) => new()
    {
        ["age"] = observer.Age,
        ["pupilMm"] = observer.PupilMm,
        ["wearsSpectacles"] = observer.WearsSpectacles,
        ["astigmatismDioptres"] = observer.AstigmatismDioptres,
        ["leastEyeReliefMm"] = observer.LeastEyeReliefMm,
        ["observes"] = Texts(observer.Observes.Select(interest => Word(interest))),
    };

    private static JsonObject OwnedOf(OracleOwned owned)
    {
        if (owned.Item is not { } item)
        {
            return new JsonObject { ["id"] = owned.Id };
        }

        var json = ItemOf(item);
        json["price"] = item.Price;
        return json;
    }

    private static JsonObject ForSale(OracleItem item)
    {
        var json = ItemOf(item);
        json["price"] = item.Price;
        json["inStock"] = item.InStock;
        return json;
    }

    private static JsonObject ItemOf(OracleItem item)
    {
        var json = new JsonObject
        {
            ["id"] = item.Id,
            ["kind"] = Word(item.Kind),
            ["barrel"] = Word(item.Barrel),
            ["massGrams"] = item.MassGrams,
            ["parfocalGroup"] = item.ParfocalGroup,
        };
        foreach (var (name, value) in OpticsOf(item))
        {
            json[name] = value;
        }

        return json;
    }

    private static IEnumerable<(string Name, JsonNode? Value)> OpticsOf(OracleItem item) => item.Kind switch
    {
        OracleKind.Barlow => [("factors", List(item.Factors, factor => JsonValue.Create(factor))), ("fastestFocalRatio", item.FastestFocalRatio)],
        OracleKind.Zoom =>
        [
            ("shortestFocalLengthMm", item.ShortestFocalLengthMm),
            ("longestFocalLengthMm", item.LongestFocalLengthMm),
            ("apparentFieldAtShortestDeg", item.ApparentFieldAtShortestDeg),
            ("apparentFieldAtLongestDeg", item.ApparentFieldAtLongestDeg),
            ("eyeReliefMm", item.EyeReliefMm),
            ("fastestFocalRatio", item.FastestFocalRatio),
        ],
        _ =>
        [
            ("focalLengthMm", item.FocalLengthMm),
            ("apparentFieldDeg", item.StatedApparentFieldDeg),
            ("fieldStopMm", item.FieldStopMm),
            ("eyeReliefMm", item.StatedEyeReliefMm),
            ("fastestFocalRatio", item.FastestFocalRatio),
            ("purpose", item.IsReticle ? "reticle" : null),
        ],
    };

    private static JsonObject LimitsOf(OracleLimits limits) => new()
    {
        ["budget"] = limits.Budget,
        ["maxPurchases"] = limits.MaxPurchases,
        ["maxBarlows"] = limits.MaxBarlows,
        ["maxPricePerItem"] = limits.MaxPricePerItem,
        ["maxItemMassGrams"] = limits.MaxItemMassGrams,
        ["allowedOverlaps"] = limits.AllowedOverlaps,
    };

    private static JsonObject PreferencesOf(OraclePreferences preferences) => new()
    {
        ["prefer"] = Word(preferences.Prefer),
        ["leastStep"] = preferences.LeastStep,
        ["enoughStep"] = preferences.EnoughStep,
        ["leastApparentFieldDeg"] = preferences.LeastApparentFieldDeg,
        ["barlows"] = Word(preferences.Barlows),
        ["zooms"] = Word(preferences.Zooms),
        ["mustInclude"] = Texts(preferences.MustInclude),
        ["exclude"] = Texts(preferences.Exclude),
        ["mustFrame"] = List(preferences.MustFrame, frame => new JsonObject
        {
            ["name"] = frame.Name,
            ["widthDeg"] = frame.WidthDeg,
            ["telescope"] = frame.Telescope,
        }),
        ["reticle"] = preferences.ReticleLeastPower is { } power ? new JsonObject { ["leastPower"] = power } : null,
    };

    private static string? Word(Enum? value) => value switch
    {
        null => null,
        OracleBarrel.Inch0965 => "0.965in",
        OracleBarrel.Inch125 => "1.25in",
        OracleBarrel.Inch2 => "2in",
        _ => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString()),
    };

    private static JsonArray List<T>(IEnumerable<T> things, Func<T, JsonNode?> write) => [.. things.Select(write)];

    private static JsonArray Texts(IEnumerable<string?> texts) => List(texts, text => JsonValue.Create(text));
}
