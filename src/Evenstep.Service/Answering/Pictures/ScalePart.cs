using Evenstep.Planning.Optics;

namespace Evenstep.Service.Answering.Pictures;

/// <summary>Draws the scale that all ladders of one telescope share: above the line brightness, below it power.</summary>
internal static class ScalePart
{
    private const double TickLength = 4;

    /// <summary>From hundredths to tens of thousands, in the order in which they are wanted.</summary>
    private static readonly double[] RoundNumbers =
    [
        .. from mantissa in new[] { 1, 2, 5, 3, 7, 1.5, 4, 6 }
           from magnitude in new[] { 0.01, 0.1, 1, 10, 100, 1000, 10000 }
           select Math.Round(mantissa * magnitude, 3),
    ];

    public static void Draw(Sheet sheet, TelescopeInUse telescope, PowerScale scale)
    {
        sheet.Write(Face.Quiet, sheet.Words.Say("picture/brightness"));
        var apertureMm = telescope.Telescope.ApertureMm;
        var line = sheet.Y + Face.Quiet.LineHeight + TickLength;
        sheet.Draw(Svg.Line("axis", Sheet.Left, line, Sheet.Right, line));
        DrawTicks(sheet, line - TickLength, [.. RoundPupils(telescope, scale).Select(pupilMm => TickOf(scale, apertureMm / pupilMm, Written(sheet, pupilMm)))]);
        sheet.Skip(Face.Quiet.LineHeight + (2 * TickLength));
        DrawTicks(sheet, line, [.. Powers(telescope.Range, scale).Select(power => PowerTick(sheet, scale, telescope.Range, power))]);
        sheet.Skip(Face.Strong.LineHeight);
    }

    /// <summary>Those that are in the way of earlier ones are left out.</summary>
    private static void DrawTicks(Sheet sheet, double tickTop, Tick[] ticks)
    {
        var row = new LabelRows(Sheet.Left, Sheet.Right);
        foreach (var tick in ticks)
        {
            if (row.Place(tick.X, TextWidth.Of(tick.Text, tick.Face), mostRows: 1) is { } place)
            {
                sheet.Draw(Svg.Line("axis", tick.X, tickTop, tick.X, tickTop + TickLength));
                sheet.Draw(Svg.Text(place.Centre, sheet.Y + tick.Face.Ascent, tick.Face, tick.Text, Anchor.Middle));
            }
        }
    }

    private static Tick PowerTick(Sheet sheet, PowerScale scale, PowerRange range, double power) =>
        TickOf(scale, power, sheet.Words.PowerOf(power)) with { Face = power == range.Lowest || power == range.Highest ? Face.Strong : Face.Quiet };

    private static Tick TickOf(PowerScale scale, double power, string text) => new(scale.XOf(power), text, Face.Quiet);

    private static string Written(Sheet sheet, double number) => number.ToString("0.##", sheet.Words.Language.Numbers);

    private static IEnumerable<double> RoundPupils(TelescopeInUse telescope, PowerScale scale) =>
        RoundNumbers.Where(pupilMm => scale.Holds(telescope.Telescope.ApertureMm / pupilMm));

    /// <summary>The ends of the range first.</summary>
    private static IEnumerable<double> Powers(PowerRange range, PowerScale scale) =>
        [range.Lowest, range.Highest, .. RoundNumbers.Where(power => scale.Holds(power) && double.IsInteger(power))];

    private sealed record Tick(double X, string Text, Face Face);
}
