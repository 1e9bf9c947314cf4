using System.Xml.Linq;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Service.Answering.Pictures;

/// <summary>
/// Draws a ladder as stairs, from the lowest power at the top to the highest at the bottom: each view on a tread of its own
/// with what the observer sees, so that even steps make a straight flight. A text has the height of its tread for itself, and
/// stands to the right or to the left of the riser there: nothing can touch it.
/// </summary>
internal static class StairsPart
{
    private const double Beside = 9;
    private const double Above = MarkPart.Reach + 1;
    private const double Below = 4;

    /// <summary>A text that needs no more than this is not moved to where there is more room.</summary>
    private const double Comfortable = 190;

    private const int MostLinesOfName = 2;

    public static void Draw(Sheet sheet, PowerScale scale, Ladder ladder, LadderPlace place, Stage stage)
    {
        sheet.WriteAll(Face.Strong, sheet.Words.Say(ladder.Usable.IsEmpty ? "picture/nothing-usable" : "picture/stairs"));
        var flight = new Flight(scale, [.. ladder.Jumps().Where(jump => !jump.IsEnough(stage.Enough)).Select(jump => jump.ToPower)]);
        List<XElement> marks = [];
        foreach (var view in ladder.Usable)
        {
            var top = sheet.Y;
            sheet.Skip(Above);
            DrawText(sheet, view, stage, SideOf(scale.XOf(view.View.Power)));
            sheet.Skip(Below);
            flight.Lead(sheet, view, top, sheet.Y);
            marks.Add(MarkPart.Of(view, scale, sheet.Y, sheet.Words, place, MarkPart.OnRung));
        }

        // Over the stairs, which would cross them out.
        marks.ForEach(sheet.Draw);
        sheet.Skip(MarkPart.Reach);
    }

    private static void DrawText(Sheet sheet, KitView view, Stage stage, Side side)
    {
        foreach (var (face, text) in LinesOf(sheet.Words, view, stage, side.Width))
        {
            sheet.Draw(Svg.Text(side.X, sheet.Y + face.Ascent, face, text, side.Anchor));
            sheet.Skip(face.LineHeight);
        }
    }

    private static IEnumerable<(Face Face, string Text)> LinesOf(PictureWords words, KitView view, Stage stage, double width)
    {
        foreach (var line in Typesetting.Break(words.SightOf(view.View), Face.Strong, width))
        {
            yield return (Face.Strong, line);
        }

        var isNew = stage.Kit.Purchases.Contains(view.Eyepiece);
        foreach (var line in Named(words.Whose(view.Eyepiece, isNew), isNew, width))
        {
            yield return line;
        }

        var isBarlowNew = view.Barlow is { } barlow && stage.Kit.Purchases.Contains(barlow);
        foreach (var line in view.Barlow is null ? [] : Named(words.WhoseThrough(view, isBarlowNew), isBarlowNew, width))
        {
            yield return line;
        }
    }

    private static IEnumerable<(Face Face, string Text)> Named(string text, bool isNew, double width)
    {
        var face = isNew ? Face.Fresh : Face.Quiet;
        return Typesetting.Break(text, face, width, MostLinesOfName).Select(line => (face, line));
    }

    private static Side SideOf(double x)
    {
        var (right, left) = (Sheet.Right - x - Beside, x - Beside - Sheet.Left);
        return right >= Math.Min(left, Comfortable)
            ? new Side(x + Beside, Anchor.Start, right)
            : new Side(x - Beside, Anchor.End, left);
    }

    /// <summary>Where a text stands.</summary>
    private readonly record struct Side(double X, Anchor Anchor, double Width);

    /// <summary>How far along the flight is.</summary>
    private sealed class Flight(PowerScale scale, double[] wideUpTo)
    {
        private double? end;

        /// <summary>Draws the tread from the view before to the next one, and the riser down to it.</summary>
        public void Lead(Sheet sheet, KitView view, double top, double bottom)
        {
            var x = scale.XOf(view.View.Power);
            if (end is { } from)
            {
                var isWide = Array.Exists(wideUpTo, power => Math.Abs(Math.Log(power / view.View.CutPower)) < Tolerance.Value);
                sheet.Draw(Svg.Path(isWide ? "tread-wide" : "tread", Svg.Way($"M{Math.Min(from, x)} {top}H{x}")));
                sheet.Draw(Svg.Path("tread", Svg.Way($"M{x} {top}V{bottom}")));
            }

            end = scale.XOf(view.View.PowerAtShortest);
        }
    }
}
