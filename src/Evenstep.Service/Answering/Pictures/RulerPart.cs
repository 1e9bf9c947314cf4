using System.Xml.Linq;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Pictures;

/// <summary>
/// Draws a ladder as a ruler: a band that is shaded where a view is near enough and hatched where none is, the views on it,
/// arcs from each eyepiece to its views through a Barlow, and below the steps with their ratios.
/// </summary>
internal static class RulerPart
{
    private const double BandHeight = 14;
    private const double HatchGap = 5;
    private const double LowestArc = 8;
    private const double HighestArc = 24;
    private const double ArcSlope = 0.3;
    private const double BracketDrop = 6;
    private const double BracketEnd = 3;

    /// <summary>Steps that are enough are told in a few rows at most; the wide ones in any case.</summary>
    private const int MostRowsOfEnough = 2;

    public static void Draw(Sheet sheet, PowerScale scale, Ladder ladder, LadderPlace place, Stage stage)
    {
        sheet.WriteBothEnds(Face.Strong, sheet.Words.Say(stage.CaptionKey), Face.Quiet, sheet.Words.ServedBy(ladder));
        var arcs = ladder.Usable.Where(view => view.Barlow is not null).ToList();
        sheet.Skip(MarkPart.Reach + (arcs.Count > 0 ? HighestArc - MarkPart.Reach + 2 : 0));
        foreach (var view in arcs)
        {
            sheet.Draw(ArcOf(view, scale, sheet.Y));
        }

        DrawBand(sheet, scale, ladder);
        foreach (var view in ladder.Usable)
        {
            sheet.Draw(MarkPart.Of(view, scale, sheet.Y + (BandHeight / 2), sheet.Words, place, MarkPart.OnRuler));
        }

        sheet.Skip(BandHeight + BracketDrop);
        DrawSteps(sheet, scale, ladder, stage.Enough);
    }

    /// <summary>From the eyepiece alone to the same through a Barlow: for one factor always equally long.</summary>
    private static XElement ArcOf(KitView view, PowerScale scale, double y)
    {
        var (from, to) = (scale.Unclipped(view.View.Power / view.View.Factor), scale.XOf(view.View.Power));
        var top = y - Math.Clamp((to - from) * ArcSlope, LowestArc, HighestArc);
        var way = from < Sheet.Left
            ? Svg.Way($"M{Sheet.Left} {top}C{(Sheet.Left + to) / 2} {top} {to} {top} {to} {y}")
            : Svg.Way($"M{from} {y}C{from} {top - 6} {to} {top - 6} {to} {y}");
        return Svg.Path(view.NeedsPurchase ? "arc-new" : "arc", way);
    }

    private static void DrawBand(Sheet sheet, PowerScale scale, Ladder ladder)
    {
        var axis = ladder.Telescope.Axis;
        var reached = 0.0;
        foreach (var served in ladder.Served)
        {
            DrawHatch(sheet, XAt(reached), XAt(served.From));
            sheet.Draw(Svg.Rectangle("served", XAt(served.From), sheet.Y, XAt(served.To) - XAt(served.From), BandHeight));
            reached = served.To;
        }

        DrawHatch(sheet, XAt(reached), XAt(axis.Length));
        sheet.Draw(Svg.Rectangle("band", XAt(0), sheet.Y, XAt(axis.Length) - XAt(0), BandHeight));

        double XAt(double position) => scale.XOf(axis.PowerAt(position));
    }

    private static void DrawHatch(Sheet sheet, double from, double to)
    {
        if (to - from > Tolerance.Value)
        {
            sheet.Draw(Svg.Path("hatch", string.Concat(HatchOf(from, to, sheet.Y, BandHeight))));
        }
    }

    /// <summary>Slanting lines, cut to a box.</summary>
    public static IEnumerable<string> HatchOf(double left, double right, double top, double height)
    {
        for (var foot = left - height + HatchGap; foot < right; foot += HatchGap)
        {
            var (from, to) = (Math.Max(foot, left), Math.Min(foot + height, right));
            if (from < to)
            {
                yield return Svg.Way($"M{from} {top + height - (from - foot)}L{to} {top + height - (to - foot)}");
            }
        }
    }

    private static void DrawSteps(Sheet sheet, PowerScale scale, Ladder ladder, Step enough)
    {
        var rows = new LabelRows(Sheet.Left, Sheet.Right);
        foreach (var jump in ladder.Jumps().OrderBy(jump => jump.IsEnough(enough)))
        {
            sheet.Draw(StepOf(sheet, scale, jump, enough, rows));
        }

        sheet.Skip(BracketEnd + (rows.Count * Face.Quiet.LineHeight));
    }

    private static XElement StepOf(Sheet sheet, PowerScale scale, Jump jump, Step enough, LabelRows rows)
    {
        var isEnough = jump.IsEnough(enough);
        var (face, text) = (isEnough ? Face.Quiet : Face.Strong, sheet.Words.RatioOf(jump, enough));
        var (from, to) = (scale.XOf(jump.FromPower), scale.XOf(jump.ToPower));
        var place = rows.Place((from + to) / 2, TextWidth.Of(text, face), isEnough ? MostRowsOfEnough : int.MaxValue);
        var inset = Math.Min(1, (to - from) / 4);
        var step = Svg.Group(
            isEnough ? "step" : "step-wide",
            sheet.Words.Tell(jump, enough),
            Svg.Attribute("data-ratio", Rounded.Ratio(jump.Ratio)),
            Svg.Path("bracket", Svg.Way($"M{from + inset} {sheet.Y - BracketEnd}V{sheet.Y}H{to - inset}V{sheet.Y - BracketEnd}")));
        if (place is { } found)
        {
            step.Add(Svg.Text(found.Centre, sheet.Y + BracketEnd + (found.Row * Face.Strong.LineHeight) + face.Ascent, face, text, Anchor.Middle));
        }

        return step;
    }
}
