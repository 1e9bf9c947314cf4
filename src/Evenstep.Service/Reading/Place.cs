using System.Globalization;

namespace Evenstep.Service.Reading;

/// <summary>A place in a JSON body; written as a JSON Pointer (RFC 6901).</summary>
internal sealed class Place
{
    public static readonly Place Root = new(null, "");

    private readonly Place? parent;
    private readonly string step;

    private Place(Place? parent, string step)
    {
        this.parent = parent;
        this.step = step;
    }

    public Place At(string name) => new(this, name);

    public Place At(int index) => new(this, index.ToString(CultureInfo.InvariantCulture));

    public override string ToString() => parent is null ? "" : $"{parent}/{Escape(step)}";

    private static string Escape(string step) =>
        step.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);
}
