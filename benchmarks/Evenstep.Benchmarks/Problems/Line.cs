using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks.Problems;

/// <summary>A line of eyepieces of one style, with its own place in price, comfort and series.</summary>
internal sealed class Line
{
    private const double DegreesPerRadian = 57.3;
    private const double MostStopIn125Mm = 27.4;
    private const double MostStopIn2Mm = 46.5;
    private const double LongestMm = 56;

    private readonly string id;
    private readonly Style style;
    private readonly double apparentFieldDeg;
    private readonly double dearness;
    private readonly double comfort;
    private readonly bool publishesStops;
    private readonly string? parfocalGroup;

    public Line(string id, Dice dice)
    {
        this.id = id;
        style = dice.Pick(Style.All);
        apparentFieldDeg = style.ApparentFieldDeg + dice.Int(-2, 2);
        dearness = dice.Between(0.7, 1.4);
        comfort = dice.Between(0.9, 1.1);
        publishesStops = dice.Chance(0.6);
        parfocalGroup = dice.Chance(0.4) ? id : null;
    }

    /// <summary>The line's eyepieces, shortest first.</summary>
    public IEnumerable<Item> Eyepieces(Dice dice)
    {
        var ratio = style.Ratio.Draw(dice);
        var focalLengthMm = style.Shortest.Draw(dice);
        for (var i = dice.Int(style.MostItems - 2, style.MostItems); i > 0 && focalLengthMm < LongestMm; i--, focalLengthMm *= ratio)
        {
            yield return Eyepiece(Math.Round(focalLengthMm, 1), dice);
        }
    }

    private Item Eyepiece(double focalLengthMm, Dice dice)
    {
        var share = style.FieldStopShare * focalLengthMm / DegreesPerRadian;
        var stopMm = Math.Round(Math.Min(share * apparentFieldDeg, MostStopIn2Mm), 1);
        var barrel = stopMm > MostStopIn125Mm ? Barrel.Inch2 : Barrel.Inch125;
        var optic = new Eyepiece(
            focalLengthMm,
            Math.Min(apparentFieldDeg, Math.Round(stopMm / share)),
            Math.Round(comfort * style.EyeReliefMm.Of(focalLengthMm), 1),
            barrel)
        {
            FieldStopMm = publishesStops ? stopMm : null,
        };
        return Shop.Item($"{id}-{focalLengthMm:0.0}", optic, dearness * style.Price.Of(stopMm), style.MassGrams.Of(stopMm * stopMm), dice, parfocalGroup);
    }
}
