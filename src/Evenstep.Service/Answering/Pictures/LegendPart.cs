using System.Xml.Linq;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Service.Answering.Pictures;

/// <summary>Says what the signs of a picture mean: of those only that occur in it.</summary>
internal static class LegendPart
{
    private const double SignWidth = 20;
    private const double TextAfter = 6;
    private const double Apart = 14;
    private const double BoxHeight = 9;

    public static void Draw(Sheet sheet, LadderScene scene)
    {
        var x = Sheet.Left;
        foreach (var entry in EntriesOf(scene, sheet.Words))
        {
            var width = SignWidth + TextAfter + TextWidth.Of(entry.Text, Face.Quiet);
            if (x > Sheet.Left && x + width > Sheet.Right)
            {
                x = Sheet.Left;
                sheet.Skip(Face.Quiet.LineHeight);
            }

            DrawEntry(sheet, entry, x);
            x += width + Apart;
        }

        sheet.Skip(Face.Quiet.LineHeight);
    }

    private static void DrawEntry(Sheet sheet, Entry entry, double x)
    {
        sheet.Draw(entry.Sign(x, sheet.Y + (Face.Quiet.LineHeight / 2)));
        var text = Typesetting.Cut(entry.Text, Face.Quiet, Sheet.Right - x - SignWidth - TextAfter);
        sheet.Draw(Svg.Text(x + SignWidth + TextAfter, sheet.Y + Face.Quiet.Ascent, Face.Quiet, text));
    }

    private static IEnumerable<Entry> EntriesOf(LadderScene scene, PictureWords words)
    {
        var ladders = scene.Stages.SelectMany(stage => stage.Kit.Ladders.Select(ladder => (Ladder: ladder, stage.Enough))).ToList();
        var views = ladders.SelectMany(one => one.Ladder.Usable).ToList();
        Entry?[] entries =
        [
            Occurring(views.Any(view => !view.NeedsPurchase), "picture/legend/own", (x, y) => MarkPart.GlyphOf(isNew: false, x + (SignWidth / 2), y)),
            Occurring(views.Any(view => view.NeedsPurchase), "picture/legend/new", (x, y) => MarkPart.GlyphOf(isNew: true, x + (SignWidth / 2), y)),
            Occurring(views.Any(view => view.View.IsZoom), "picture/legend/zoom", (x, y) => MarkPart.BarOf(isNew: false, x, x + SignWidth, y)),
            Occurring(views.Any(view => view.Barlow is not null), "picture/legend/barlow", ArcOf),
            Occurring(views.Count > 0, "picture/legend/served", (x, y) => Svg.Rectangle("served", x, y - (BoxHeight / 2), SignWidth, BoxHeight)),
            Occurring(ladders.Exists(one => IsLacking(one.Ladder)), "picture/legend/not-served", HatchOf),
            Occurring(ladders.Exists(one => one.Ladder.Jumps().Any(jump => jump.AtEnd)), "picture/legend/end", TwiceOf),
        ];
        return entries.OfType<Entry>();

        Entry? Occurring(bool occurs, string key, Func<double, double, XElement> sign) => occurs ? new Entry(words.Say(key), sign) : null;
    }

    private static XElement ArcOf(double x, double y) => Svg.Path("arc", Svg.Way($"M{x} {y + 4}C{x} {y - 7} {x + SignWidth} {y - 7} {x + SignWidth} {y + 4}"));

    private static XElement HatchOf(double x, double y) =>
        Svg.Path("hatch", string.Concat(RulerPart.HatchOf(x, x + SignWidth, y - (BoxHeight / 2), BoxHeight)));

    private static XElement TwiceOf(double x, double y) =>
        Svg.Text(x + (SignWidth / 2), y - (Face.Quiet.LineHeight / 2) + Face.Quiet.Ascent, Face.Quiet, PictureWords.Twice, Anchor.Middle);

    private static bool IsLacking(Ladder ladder) => ladder.Figures.ServedShare < 1 - Tolerance.Value;

    private sealed record Entry(string Text, Func<double, double, XElement> Sign);
}
