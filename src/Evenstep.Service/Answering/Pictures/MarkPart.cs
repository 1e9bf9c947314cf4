using System.Globalization;
using System.Xml.Linq;
using Evenstep.Planning.Purchases;

namespace Evenstep.Service.Answering.Pictures;

/// <summary>Which ladder of a picture: the place of the telescope and of the stage, each from 0.</summary>
internal readonly record struct LadderPlace(int Telescope, int Stage);

/// <summary>
/// Draws a view where its power is. What is there already is a disc, what is proposed a diamond, so that nobody needs to see
/// a colour to tell them apart; a zoom is a bar from its lowest power to its highest.
/// </summary>
internal static class MarkPart
{
    /// <summary>How far a mark reaches from its middle.</summary>
    public const double Reach = 5.5;

    public const string OnRuler = "view";
    public const string OnRung = "rung";

    private const double DiscRadius = 4;
    private const double BarHeight = 6;

    /// <param name="view">A usable view.</param>
    /// <param name="scale">Where its power is.</param>
    /// <param name="y">How far down the middle of the mark is.</param>
    /// <param name="words">To tell it in.</param>
    /// <param name="place">The ladder it is on.</param>
    /// <param name="name">The class of the mark.</param>
    public static XElement Of(KitView view, PowerScale scale, double y, PictureWords words, LadderPlace place, string name)
    {
        var mark = Svg.Group(name, words.Tell(view), Data(view, place).ToArray());
        mark.Add(view.View.IsZoom
            ? BarOf(view.NeedsPurchase, scale.XOf(view.View.Power), scale.XOf(view.View.PowerAtShortest), y)
            : GlyphOf(view.NeedsPurchase, scale.XOf(view.View.Power), y));
        return mark;
    }

    public static XElement GlyphOf(bool isNew, double x, double y) => isNew
        ? Svg.Path("new", Svg.Way($"M{x} {y - Reach}l{Reach} {Reach} {-Reach} {Reach} {-Reach} {-Reach}z"))
        : Svg.Circle("own", x, y, DiscRadius);

    public static XElement BarOf(bool isNew, double from, double to, double y) =>
        Svg.Rectangle(isNew ? "new" : "own", from, y - (BarHeight / 2), Math.Max(1, to - from), BarHeight, isNew ? 0 : BarHeight / 2);

    /// <summary>What a program may read off a picture.</summary>
    private static IEnumerable<XAttribute?> Data(KitView view, LadderPlace place) =>
    [
        new("data-telescope", place.Telescope),
        new("data-stage", place.Stage),
        new("data-eyepiece", Typesetting.Clean(view.Eyepiece.Id)),
        view.Barlow is { } barlow ? new("data-barlow", Typesetting.Clean(barlow.Id)) : null,
        Exact("data-factor", view.View.Factor),
        Exact("data-power", view.View.Power),
        view.View.IsZoom ? Exact("data-power-at-shortest", view.View.PowerAtShortest) : null,
        new("data-new", view.NeedsPurchase),
    ];

    private static XAttribute Exact(string name, double value) => new(name, value.ToString("0.####", CultureInfo.InvariantCulture));
}
