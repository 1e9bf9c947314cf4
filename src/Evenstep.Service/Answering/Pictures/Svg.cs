using System.Globalization;
using System.Xml.Linq;

namespace Evenstep.Service.Answering.Pictures;

/// <summary>Where a text stands to its x.</summary>
internal enum Anchor
{
    Start,
    Middle,
    End,
}

/// <summary>The elements that pictures are made of. What they look like is decided by their classes alone.</summary>
internal static class Svg
{
    public const string Prefix = "evenstep";

    public static readonly XNamespace Space = "http://www.w3.org/2000/svg";

    public static XElement Text(double x, double baseline, Face face, string text, Anchor anchor = Anchor.Start) => new(
        Space + "text",
        Attribute("x", x),
        Attribute("y", baseline),
        Class(face.Name),
        anchor == Anchor.Start ? null : new XAttribute("text-anchor", anchor == Anchor.Middle ? "middle" : "end"),
        text);

    public static XElement Rectangle(string name, double x, double y, double width, double height, double corner = 0) => new(
        Space + "rect",
        Class(name),
        Attribute("x", x),
        Attribute("y", y),
        Attribute("width", Math.Max(0, width)),
        Attribute("height", height),
        corner > 0 ? Attribute("rx", corner) : null);

    public static XElement Line(string name, double x1, double y1, double x2, double y2) =>
        Path(name, $"M{Number(x1)} {Number(y1)}L{Number(x2)} {Number(y2)}");

    public static XElement Path(string name, string way) => new(Space + "path", Class(name), new XAttribute("d", way));

    public static XElement Circle(string name, double x, double y, double radius) =>
        new(Space + "circle", Class(name), Attribute("cx", x), Attribute("cy", y), Attribute("r", radius));

    /// <summary>Things that belong together, with what is said when they are pointed at.</summary>
    public static XElement Group(string name, string title, params ReadOnlySpan<object?> content) =>
        new(Space + "g", Class(name), new XElement(Space + "title", title), content.ToArray());

    public static XAttribute Class(string name) => new("class", $"{Prefix}-{name}");

    public static XAttribute Attribute(string name, double value) => new(name, Number(value));

    /// <summary>The way of a path, with its numbers as they are written in pictures.</summary>
    public static string Way(FormattableString way) =>
        string.Format(CultureInfo.InvariantCulture, way.Format, [.. way.GetArguments().Select(number => Number((double)number!))]);

    /// <summary>To a hundredth of a unit: finer than any screen.</summary>
    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
