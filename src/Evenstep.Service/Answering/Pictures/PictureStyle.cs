using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Evenstep.Service.Http.Negotiation;

namespace Evenstep.Service.Answering.Pictures;

/// <summary>A colour of the pictures by day and by night; a page may set another through a custom property of its name.</summary>
internal sealed record Tint(string Name, string Day, string Night)
{
    /// <summary>What everything is drawn on.</summary>
    public static readonly Tint Paper = new("paper", "#f5f7f4", "#0d1920");

    /// <summary>What must be read, and what is owned.</summary>
    public static readonly Tint Ink = new("ink", "#13232c", "#e7eeeb");

    /// <summary>What may be read.</summary>
    public static readonly Tint Quiet = new("quiet", "#475862", "#aabac0");

    /// <summary>Lines that mean something.</summary>
    public static readonly Tint Line = new("line", "#73838b", "#768a94");

    /// <summary>Where a view is near enough.</summary>
    public static readonly Tint Served = new("served", "#bfd9d4", "#2a5154");

    /// <summary>What is proposed.</summary>
    public static readonly Tint Fresh = new("new", "#7d4a00", "#f3c56b");

    public static readonly ImmutableArray<Tint> All = [Paper, Ink, Quiet, Line, Served, Fresh];
}

/// <summary>
/// What pictures look like: an instrument that is read at night without spoiling the eyes. Every rule names the colour
/// itself first, for readers that know no custom properties.
/// </summary>
internal static class PictureStyle
{
    private static readonly (string Selector, string Property, Tint Tint)[] Colours =
    [
        (Of("paper"), "fill", Tint.Paper),
        (Of("own"), "fill", Tint.Ink),
        (Of("own"), "stroke", Tint.Paper),
        (Of("new"), "fill", Tint.Paper),
        (Of("new"), "stroke", Tint.Fresh),
        (Of("served"), "fill", Tint.Served),
        (Of("band"), "stroke", Tint.Line),
        (Of("hatch"), "stroke", Tint.Line),
        (Of("axis"), "stroke", Tint.Line),
        (Of("rule"), "stroke", Tint.Served),
        (Of("tread"), "stroke", Tint.Line),
        (Of("tread-wide"), "stroke", Tint.Ink),
        (Of("arc"), "stroke", Tint.Quiet),
        (Of("arc-new"), "stroke", Tint.Fresh),
        (Of("step"), "stroke", Tint.Line),
        (Of("step-wide"), "stroke", Tint.Ink),
        ($"{Of("title")},{Of("heading")},{Of("strong")},{Of("plain")}", "fill", Tint.Ink),
        (Of("quiet"), "fill", Tint.Quiet),
        (Of("fresh"), "fill", Tint.Fresh),
    ];

    private static readonly string Shapes =
        $"{Of("band")},{Of("hatch")},{Of("axis")},{Of("rule")},{Of("tread")},{Of("tread-wide")},{Of("arc")},{Of("arc-new")},{Of("bracket")}{{fill:none}}"
        + $"{Of("arc-new")}{{stroke-dasharray:3 2}}{Of("own")}{{stroke-width:1}}{Of("new")}{{stroke-width:2}}"
        + $"{Of("tread-wide")},{Of("step-wide")} {Of("bracket")}{{stroke-width:2.5}}"
        + $".{Svg.Prefix} text{{stroke:none}}";

    /// <summary>The style that every picture carries along.</summary>
    public static readonly string Text =
        $".{Svg.Prefix}{{font-family:system-ui,sans-serif;font-variant-numeric:tabular-nums}}"
        + string.Concat(Face.All.Select(RuleOf))
        + Shapes
        + string.Concat(Colours.Select(colour => RuleOf(colour, colour.Tint.Day)))
        + $"@media(prefers-color-scheme:dark){{{string.Concat(Colours.Select(colour => RuleOf(colour, colour.Tint.Night)))}}}"
        + $"@media(min-width:45em){{svg:root{{display:block;width:34rem;height:auto;margin:1.5rem auto;background:{Tint.Paper.Day}}}}}"
        + $"@media(min-width:45em) and (prefers-color-scheme:dark){{svg:root{{background:{Tint.Paper.Night}}}}}";

    /// <summary>Nothing but this style is to be done with a picture, even if it is opened by itself.</summary>
    public static readonly string Policy =
        $"default-src 'none'; style-src 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(Text)))}'; frame-ancestors *";

    /// <summary>The policy for an answer in a form; null unless it is a picture.</summary>
    public static string? PolicyOf(AnswerFormat form) => form == AnswerFormat.Picture ? Policy : null;

    private static string Of(string name) => $".{Svg.Prefix}-{name}";

    private static string RuleOf(Face face) => string.Create(
        CultureInfo.InvariantCulture, $"{Of(face.Name)}{{font-size:{face.Size}px;font-weight:{(face.IsBold ? 700 : 400)}}}");

    private static string RuleOf((string Selector, string Property, Tint Tint) colour, string value) =>
        $"{colour.Selector}{{{colour.Property}:{value};{colour.Property}:var(--{Svg.Prefix}-{colour.Tint.Name},{value})}}";
}
