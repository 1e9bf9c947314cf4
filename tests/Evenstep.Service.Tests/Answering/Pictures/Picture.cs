using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using Evenstep.Service.Answering.Pictures;

namespace Evenstep.Service.Tests.Answering.Pictures;

/// <summary>A view as a picture shows it.</summary>
internal sealed record DrawnView(int Telescope, int Stage, string Eyepiece, string? Barlow, double Factor, bool IsNew)
{
    public required double Power { get; init; }

    public required double? PowerAtShortest { get; init; }

    /// <summary>The middle of the mark, or the left end of a zoom's bar.</summary>
    public required double X { get; init; }

    /// <summary>The right end of a zoom's bar.</summary>
    public required double? XTo { get; init; }
}

/// <summary>The room that a text may take.</summary>
internal sealed record Box(string Text, double Left, double Top, double Right, double Bottom)
{
    public bool Touches(Box other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;
}

/// <summary>A picture, read back.</summary>
internal sealed class Picture
{
    private const double LetterHeight = 0.99;
    private const double LetterDepth = 0.31;

    public Picture(byte[] svg)
        : this(Encoding.UTF8.GetString(svg))
    {
    }

    public Picture(string svg) => Root = XDocument.Parse(svg).Root!;

    public XElement Root { get; }

    public double Height => Number(Root, "height");

    public string Title => Root.Element(Svg.Space + "title")!.Value;

    public string Description => Root.Element(Svg.Space + "desc")!.Value;

    public IReadOnlyList<Box> Boxes => [.. Root.Descendants(Svg.Space + "text").Select(BoxOf)];

    public IReadOnlyList<DrawnView> On(string name) => [.. Of(name).Select(ViewOf)];

    public IEnumerable<XElement> Of(string name) => Root.Descendants().Where(element => (string?)element.Attribute("class") == $"evenstep-{name}");

    /// <summary>What a text shows, without what it says when it is pointed at.</summary>
    public static string Shown(XElement text) => string.Concat(text.Nodes().OfType<XText>().Select(node => node.Value));

    private static Box BoxOf(XElement text)
    {
        var face = Face.All.Single(one => (string?)text.Attribute("class") == $"evenstep-{one.Name}");
        var width = TextWidth.Of(Shown(text), face);
        var left = Number(text, "x") - ((string?)text.Attribute("text-anchor") switch { "middle" => width / 2, "end" => width, _ => 0 });
        var baseline = Number(text, "y");
        return new Box(Shown(text), left, baseline - (face.Size * LetterHeight), left + width, baseline + (face.Size * LetterDepth));
    }

    private static DrawnView ViewOf(XElement group)
    {
        var mark = group.Elements().Last();
        var x = Start(mark);
        return new DrawnView(
            int.Parse(Attribute(group, "data-telescope"), CultureInfo.InvariantCulture),
            int.Parse(Attribute(group, "data-stage"), CultureInfo.InvariantCulture),
            Attribute(group, "data-eyepiece"), (string?)group.Attribute("data-barlow"), Number(group, "data-factor"), bool.Parse(Attribute(group, "data-new")))
        {
            Power = Number(group, "data-power"),
            PowerAtShortest = group.Attribute("data-power-at-shortest") is null ? null : Number(group, "data-power-at-shortest"),
            X = x,
            XTo = mark.Name.LocalName == "rect" ? x + Number(mark, "width") : null,
        };
    }

    private static double Start(XElement mark) => mark.Name.LocalName switch
    {
        "circle" => Number(mark, "cx"),
        "rect" => Number(mark, "x"),
        _ => double.Parse(Attribute(mark, "d")[1..].Split(' ')[0], CultureInfo.InvariantCulture),
    };

    private static double Number(XElement element, string name) => XmlConvert.ToDouble(Attribute(element, name));

    private static string Attribute(XElement element, string name) => element.Attribute(name)!.Value;
}
