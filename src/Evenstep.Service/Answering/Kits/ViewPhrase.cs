using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Kits;

/// <summary>Names a view of a kit inside a sentence.</summary>
internal static class ViewPhrase
{
    /// <summary>By what the shop, or the owner, calls its parts, and by its power.</summary>
    public static Sentence Of(KitView one) => new(
        $"view/{(one.Barlow is null ? "alone" : "through")}{(one.View.IsZoom ? "/zoom" : "")}",
        [.. ValuesOf(one), RemarkValue.Of("eyepiece", one.Eyepiece), RemarkValue.Of("barlow", one.Barlow)]);

    /// <summary>What tells it from all others.</summary>
    public static RemarkValue[] ValuesOf(KitView one) =>
    [
        RemarkValue.Of("eyepieceId", one.Eyepiece.Id),
        RemarkValue.Of("barlowId", one.Barlow?.Id),
        new RemarkValue("factor", one.View.Factor, 3),
        RemarkValue.Power("power", one.View.Power),
        one.View.IsZoom ? RemarkValue.Power("powerAtShortest", one.View.PowerAtShortest) : RemarkValue.Of("powerAtShortest", null),
    ];

    /// <summary>A power, or a zoom's stretch of them, for each view.</summary>
    public static Sentence[] PowersOf(double[] powers, object?[] powersAtShortest) =>
    [
        .. powers.Zip(powersAtShortest, (power, shortest) => shortest is null
            ? new Sentence("view/power", [RemarkValue.Power("power", power)])
            : new Sentence("view/power/zoom", [RemarkValue.Power("power", power), RemarkValue.Of("powerAtShortest", shortest)])),
    ];

    /// <summary>Two that repeat one another.</summary>
    public static RemarkValue[] ValuesOf(OverlappingPair pair) =>
    [
        RemarkValue.Of("first", ValuesOf(pair.First)),
        RemarkValue.Of("second", ValuesOf(pair.Second)),
        pair.Ratio is { } ratio ? RemarkValue.Ratio("ratio", ratio) : RemarkValue.Of("ratio", null),
    ];

    /// <summary>The same as parts of a sentence.</summary>
    public static RemarkValue[] WordsOf(OverlappingPair pair) =>
        [RemarkValue.Of("firstView", Of(pair.First)), RemarkValue.Of("secondView", Of(pair.Second))];
}
