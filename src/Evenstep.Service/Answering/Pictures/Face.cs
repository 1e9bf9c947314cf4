namespace Evenstep.Service.Answering.Pictures;

/// <summary>A way of setting text: a size in the picture's units, and a weight.</summary>
/// <param name="Name">Its class in the picture's style.</param>
/// <param name="Size">The size of the letters.</param>
/// <param name="IsBold">Whether they are bold.</param>
internal sealed record Face(string Name, double Size, bool IsBold)
{
    /// <summary>How far letters of any script reach above the line they stand on, and below it, as shares of the size.</summary>
    private const double Above = 1.0;
    private const double Below = 0.32;

    public static readonly Face Title = new("title", 18, true);
    public static readonly Face Heading = new("heading", 14, true);
    public static readonly Face Strong = new("strong", 11, true);
    public static readonly Face Plain = new("plain", 11, false);
    public static readonly Face Quiet = new("quiet", 10.5, false);
    public static readonly Face Fresh = new("fresh", 10.5, true);

    public static readonly IReadOnlyList<Face> All = [Title, Heading, Strong, Plain, Quiet, Fresh];

    public double Ascent => Size * Above;

    public double LineHeight => Size * (Above + Below);
}
