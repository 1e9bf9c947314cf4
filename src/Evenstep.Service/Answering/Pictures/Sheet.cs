using System.Xml.Linq;

namespace Evenstep.Service.Answering.Pictures;

/// <summary>What is drawn on, from top to bottom: as wide as a small telephone, and as long as it takes.</summary>
internal sealed class Sheet(PictureWords words)
{
    public const double Width = 360;
    public const double Left = 14;
    public const double Right = Width - Left;

    private readonly List<XElement> drawn = [];

    public PictureWords Words { get; } = words;

    public IReadOnlyList<XElement> Drawn => drawn;

    /// <summary>Where the next thing goes.</summary>
    public double Y { get; private set; } = Left;

    public void Draw(XElement element) => drawn.Add(element);

    public void Skip(double height) => Y += height;

    /// <summary>A line of text, cut if it is too long.</summary>
    public void Write(Face face, string text, double left = Left)
    {
        Draw(Set(face, text, left, Right - left, Y));
        Skip(face.LineHeight);
    }

    /// <summary>Lines of text, as many as it takes.</summary>
    public void WriteAll(Face face, string text)
    {
        foreach (var line in Typesetting.Break(text, face, Right - Left))
        {
            Write(face, line);
        }
    }

    /// <summary>A text at the left and one at the right, of which the second is the shorter.</summary>
    public void WriteBothEnds(Face face, string left, Face rightFace, string right)
    {
        var rightWidth = TextWidth.Of(right, rightFace);
        Draw(Set(face, left, Left, Right - Left - rightWidth - face.Size, Y));
        Draw(Svg.Text(Right, Y + face.Ascent, rightFace, right, Anchor.End));
        Skip(face.LineHeight);
    }

    /// <summary>A text under a place; if it must be cut, the whole is said when it is pointed at.</summary>
    private static XElement Set(Face face, string text, double left, double width, double top)
    {
        var cut = Typesetting.Cut(text, face, width);
        var element = Svg.Text(left, top + face.Ascent, face, cut);
        if (cut != text)
        {
            element.Add(new XElement(Svg.Space + "title", text));
        }

        return element;
    }
}
