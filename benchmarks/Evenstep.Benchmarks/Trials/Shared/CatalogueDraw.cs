using System.Globalization;
using System.Text.Json.Nodes;
using Evenstep.Benchmarks.Problems;

namespace Evenstep.Benchmarks.Trials;

/// <summary>What a drawn catalogue is made of.</summary>
/// <param name="Items">How many items, 1 to 3000.</param>
/// <param name="Barlows">The share of Barlows, 0 to 1.</param>
/// <param name="Zooms">The share of zooms, 0 to 1.</param>
/// <param name="ThreeFactors">Whether every Barlow has three factors; otherwise one to three.</param>
internal sealed record CatalogueMix(int Items, double Barlows = 0.04, double Zooms = 0.04, bool ThreeFactors = false);

/// <summary>Items as callers write them, invented within the bounds of the contract.</summary>
internal sealed class CatalogueDraw(Dice dice)
{
    private static readonly string[] Barrels = ["1.25in", "1.25in", "1.25in", "2in", "0.965in"];

    public JsonArray Items(CatalogueMix mix)
    {
        var barlows = (int)Math.Round(mix.Items * mix.Barlows);
        var zooms = (int)Math.Round(mix.Items * mix.Zooms);
        return new JsonArray(
            [.. Enumerable.Range(0, mix.Items).Select(i => ForSale(i, i < barlows ? Barlow(mix.ThreeFactors) : i < barlows + zooms ? Zoom() : Eyepiece()))]);
    }

    /// <summary>Mostly as the trade has them, now and then anything that the contract allows.</summary>
    public JsonObject Eyepiece()
    {
        var isUsual = dice.Chance(0.9);
        var focalLengthMm = isUsual ? Math.Exp(dice.Between(Math.Log(2.3), Math.Log(56))) : dice.Between(1.5, 100);
        var item = new JsonObject
        {
            ["kind"] = "eyepiece",
            ["focalLengthMm"] = Math.Round(focalLengthMm, 2),
            ["apparentFieldDeg"] = isUsual ? dice.Int(40, 100) : dice.Int(10, 130),
            ["eyeReliefMm"] = isUsual ? dice.Int(5, 22) : dice.Int(0, 60),
            ["barrel"] = dice.Pick(Barrels),
        };
        if (dice.Chance(0.3))
        {
            item["fieldStopMm"] = Math.Round(Math.Clamp(focalLengthMm, 1, 46), 1);
        }

        if (dice.Chance(0.02))
        {
            item["purpose"] = "reticle";
        }

        return item;
    }

    public JsonObject Zoom()
    {
        var shortest = Math.Round(dice.Between(2, 14), 1);
        return new JsonObject
        {
            ["kind"] = "zoom",
            ["shortestFocalLengthMm"] = shortest,
            ["longestFocalLengthMm"] = Math.Round(shortest * dice.Between(1.5, 3), 1),
            ["apparentFieldAtShortestDeg"] = dice.Int(50, 80),
            ["apparentFieldAtLongestDeg"] = dice.Int(36, 50),
            ["eyeReliefMm"] = dice.Int(8, 20),
            ["barrel"] = "1.25in",
        };
    }

    public JsonObject Barlow(bool threeFactors)
    {
        var count = threeFactors ? 3 : dice.Int(1, 3);
        double[] factors = [.. Enumerable.Range(0, count).Select(i => Math.Round((1.2 + (1.5 * i) + dice.Between(0, 1.4)), 2))];
        return new JsonObject
        {
            ["kind"] = "barlow",
            ["factors"] = new JsonArray([.. factors.Select(factor => (JsonNode)factor)]),
            ["barrel"] = dice.Chance(0.2) ? "2in" : "1.25in",
        };
    }

    private JsonObject ForSale(int number, JsonObject item)
    {
        item["id"] = string.Create(CultureInfo.InvariantCulture, $"item-{number}");
        item["price"] = dice.Chance(0.02) ? dice.Int(0, 100_000) : dice.Int(1500, 40_000) / 100m;
        if (dice.Chance(0.7))
        {
            item["massGrams"] = dice.Int(30, 900);
        }

        if (dice.Chance(0.2))
        {
            item["parfocalGroup"] = $"group {dice.Int(1, 9)}";
        }

        if (dice.Chance(0.05))
        {
            item["inStock"] = false;
        }

        return item;
    }
}
