using System.Globalization;

namespace Evenstep.Service.Contract.Fields;

/// <summary>Points into a request: into its body, written as a JSON Pointer (RFC 6901), or a query parameter, written as its name.</summary>
internal class RequestPointer
{
    public static readonly RequestPointer Root = new(null, "");

    private readonly RequestPointer? parent;
    private readonly string step;

    protected RequestPointer(RequestPointer? parent, string step)
    {
        this.parent = parent;
        this.step = step;
    }

    /// <summary>A query parameter.</summary>
    public static RequestPointer OfQuery(string name) => new(null, name);

    /// <summary>The last step of the way here.</summary>
    public string Step => step;

    public virtual RequestPointer At(string name) => new(this, name);

    public virtual RequestPointer At(int index) => new(this, index.ToString(CultureInfo.InvariantCulture));

    public override string ToString() => parent is null ? step : $"{parent}/{Escape(step)}";

    private static string Escape(string step) =>
        step.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);
}
