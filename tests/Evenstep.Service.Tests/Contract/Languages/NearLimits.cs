using System.Text.Json.Nodes;

namespace Evenstep.Service.Tests.Contract.Languages;

/// <summary>Requests whose figures lie a hair's breadth from what they are compared with, on either side.</summary>
internal sealed class NearLimits(int seed)
{
    private const double PupilMm = 6;
    private const double EyeReliefMm = 8;
    private const double LeastFieldDeg = 45;
    private const double MassLimit = 300;

    private readonly Random random = new(seed);

    public JsonObject Body()
    {
        var apertureMm = Math.Round(80 + (170 * random.NextDouble()), 1);
        var focalLengthMm = random.Next(2) == 0 ? Near(32 * apertureMm / PupilMm) : Math.Round(apertureMm * (4 + (6 * random.NextDouble())), 1);
        var focalRatio = focalLengthMm / apertureMm;
        return new JsonObject
        {
            ["telescopes"] = new JsonArray(new JsonObject { ["apertureMm"] = apertureMm, ["focalLengthMm"] = focalLengthMm, ["focuserBarrel"] = "1.25in" }),
            ["observer"] = new JsonObject { ["pupilMm"] = PupilMm },
            ["owned"] = new JsonArray(
                Eyepiece(null, Near(PupilMm * focalRatio), 50, EyeReliefMm, Near(focalRatio), Near(400)),
                Eyepiece(null, Near(0.7 * focalRatio), 50, EyeReliefMm, Near(focalRatio), 100),
                Zoom(null, Near(8), Near(24), Near(LeastFieldDeg))),
            ["catalogue"] = new JsonObject
            {
                ["currency"] = "EUR",
                ["items"] = new JsonArray([.. Enumerable.Range(0, 12).Select(i => ForSale($"item-{i}", focalRatio))]),
            },
            ["limits"] = new JsonObject { ["budget"] = 100, ["maxPricePerItem"] = 60, ["maxItemMassGrams"] = MassLimit },
            ["preferences"] = new JsonObject
            {
                ["leastApparentFieldDeg"] = random.Next(2) == 0 ? LeastFieldDeg : null,
                ["zooms"] = "allow",
                ["mustFrame"] = new JsonArray(new JsonObject { ["widthDeg"] = Math.Min(20, Near(50 * PupilMm * focalRatio / focalLengthMm)) }),
                ["reticle"] = random.Next(2) == 0 ? new JsonObject { ["leastPower"] = Near(focalLengthMm / 12) } : null,
            },
            ["explain"] = new JsonObject { ["excluded"] = "list" },
        };
    }

    private JsonObject ForSale(string id, double focalRatio)
    {
        double[] focalLengths = [Near(0.7 * focalRatio), Near(PupilMm * focalRatio), Near(12), 4 + (20 * random.NextDouble())];
        var item = random.Next(5) == 0
            ? Zoom(id, Near(8), Near(24), Near(LeastFieldDeg))
            : Eyepiece(
                id, Math.Clamp(focalLengths[random.Next(4)], 2, 60), Near(LeastFieldDeg), Near(EyeReliefMm), Near(focalRatio),
                random.Next(2) == 0 ? Near(MassLimit) : 100);
        item["price"] = 20 + random.Next(42);
        if (item["kind"]!.GetValue<string>() == "eyepiece" && random.Next(4) == 0)
        {
            item["purpose"] = "reticle";
        }

        return item;
    }

    private static JsonObject Eyepiece(string? id, double focalLengthMm, double apparentFieldDeg, double eyeReliefMm, double fastest, double massGrams) => new()
    {
        ["id"] = id, ["kind"] = "eyepiece", ["barrel"] = "1.25in", ["focalLengthMm"] = focalLengthMm, ["apparentFieldDeg"] = apparentFieldDeg,
        ["eyeReliefMm"] = eyeReliefMm, ["fastestFocalRatio"] = Math.Clamp(fastest, 2, 20), ["massGrams"] = massGrams,
    };

    private static JsonObject Zoom(string? id, double shortestMm, double longestMm, double fieldAtLongestDeg) => new()
    {
        ["id"] = id, ["kind"] = "zoom", ["barrel"] = "1.25in", ["shortestFocalLengthMm"] = shortestMm, ["longestFocalLengthMm"] = longestMm,
        ["apparentFieldAtShortestDeg"] = 60, ["apparentFieldAtLongestDeg"] = fieldAtLongestDeg, ["eyeReliefMm"] = 15,
    };

    /// <summary>Off by something between a ten-thousandth and a tenth.</summary>
    private double Near(double limit) => Math.Round(limit * (1 + ((random.Next(2) == 0 ? 1 : -1) * Math.Pow(10, -1 - (3 * random.NextDouble())))), 4);
}
