using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>What one kit has more and less of than another for the same wishes: only what can be read once it is rounded.</summary>
public static class Differences
{
    public const string CostsLess = "costs-less";
    public const string CostsMore = "costs-more";
    public const string MoreServed = "more-served";
    public const string LessServed = "less-served";
    public const string MoreComfortable = "more-comfortable";
    public const string LessComfortable = "less-comfortable";
    public const string WiderFields = "wider-fields";
    public const string NarrowerFields = "narrower-fields";
    public const string LighterAtFocuser = "lighter-at-focuser";
    public const string HeavierAtFocuser = "heavier-at-focuser";
    public const string FewerEyepieces = "fewer-eyepieces";
    public const string MoreEyepieces = "more-eyepieces";
    public const string FewerBarlows = "fewer-barlows";
    public const string MoreBarlows = "more-barlows";

    /// <summary>Where there is none of it, as it is read.</summary>
    public const string None = "none";

    /// <summary>A served share, in percent, differs only by this much: common practice, no source.</summary>
    private const double LeastServedPercent = 1;

    /// <summary>Of masses, where not all of what is owned are known.</summary>
    public const string AsFarAsKnown = "as-far-as-known";

    /// <summary>Every code that <see cref="Of"/> can give.</summary>
    public static readonly ImmutableArray<string> Codes =
    [
        CostsLess, CostsMore, MoreServed, LessServed, MoreComfortable, LessComfortable, WiderFields, NarrowerFields,
        LighterAtFocuser, HeavierAtFocuser, FewerEyepieces, MoreEyepieces, FewerBarlows, MoreBarlows,
    ];

    /// <param name="kit">What there is.</param>
    /// <param name="other">What it is compared with.</param>
    /// <param name="telescopes">The telescopes that count, by their indices.</param>
    public static ImmutableArray<Remark> Of(Kit kit, Kit other, ImmutableArray<int> telescopes) =>
    [
        .. OfMoney(kit.TotalPrice - other.TotalPrice),
        .. OfServed(ServedIn(kit, telescopes, "servedPercent"), ServedIn(other, telescopes, "otherPercent")),
        .. Compared(
            LessComfortable,
            MoreComfortable,
            ComfortIn(kit, telescopes, "comfortablePercent"),
            ComfortIn(other, telescopes, "otherPercent"),
            decimals: 0).Select(NoneAsSuch),
        .. Compared(NarrowerFields, WiderFields, NarrowestIn(kit, "apparentFieldDeg"), NarrowestIn(other, "otherDeg")),
        .. OfWeight(kit, other),
        .. Counted(FewerEyepieces, MoreEyepieces, kit, other, item => item.Ocular is not null),
        .. Counted(FewerBarlows, MoreBarlows, kit, other, item => item.IsBarlow),
    ];

    private static Remark NoneAsSuch(Remark comfort) => comfort.Code == LessComfortable && RemarkValue.Rounded((double)comfort.Values[0].Value!, 0) == 0
        ? comfort with { Variant = None }
        : comfort;

    private static ImmutableArray<Remark> OfMoney(decimal more) => more == 0 ? [] :
        [new Remark(more < 0 ? CostsLess : CostsMore, [RemarkValue.Of("difference", Math.Abs(more))])];

    /// <param name="less">The code for less of it.</param>
    /// <param name="more">The code for more of it.</param>
    /// <param name="one">Of the kit.</param>
    /// <param name="other">Of the other.</param>
    /// <param name="decimals">To which it is told in words, where that is not how it is rounded.</param>
    private static ImmutableArray<Remark> Compared(string less, string more, RemarkValue? one, RemarkValue? other, int? decimals = null)
    {
        if (one is null || other is null)
        {
            return [];
        }

        var (a, b) = (one with { Decimals = decimals ?? one.Decimals }, other with { Decimals = decimals ?? other.Decimals });
        return a.ReadsBelow(b) ? [new Remark(less, [one, other])] : b.ReadsBelow(a) ? [new Remark(more, [one, other])] : [];
    }

    private static ImmutableArray<Remark> Counted(string fewer, string more, Kit kit, Kit other, Func<Item, bool> counts)
    {
        var (count, otherCount) = (kit.Purchases.Count(counts), other.Purchases.Count(counts));
        return count == otherCount ? [] :
            [new Remark(count < otherCount ? fewer : more, [RemarkValue.Of("count", count), RemarkValue.Of("otherCount", otherCount)])];
    }

    private static ImmutableArray<Remark> OfServed(RemarkValue one, RemarkValue other) =>
        Math.Abs((double)one.Value! - (double)other.Value!) < LeastServedPercent ? [] : Compared(LessServed, MoreServed, one, other, decimals: 0);

    private static IEnumerable<Remark> OfWeight(Kit kit, Kit other)
    {
        var isAllKnown = kit.Ladders.Concat(other.Ladders).SelectMany(ladder => ladder.Usable).All(IsMassKnown);
        return Compared(LighterAtFocuser, HeavierAtFocuser, HeaviestIn(kit, "massGrams"), HeaviestIn(other, "otherGrams"))
            .Select(remark => isAllKnown ? remark : remark with { Variant = AsFarAsKnown });
    }

    private static bool IsMassKnown(KitView view) => view.Eyepiece.MassGrams is not null && (view.Barlow is null or { MassGrams: not null });

    private static RemarkValue ServedIn(Kit kit, ImmutableArray<int> telescopes, string name) =>
        RemarkValue.Percent(name, 100 * kit.FiguresIn(telescopes).ServedShare);

    private static RemarkValue ComfortIn(Kit kit, ImmutableArray<int> telescopes, string name) =>
        RemarkValue.Percent(name, 100 * kit.FiguresIn(telescopes).ComfortableShare);

    /// <summary>Of what is bought to look through; a zoom's at its longest focal length.</summary>
    private static RemarkValue? NarrowestIn(Kit kit, string name) => kit.Purchases.Where(item => item is { Ocular: not null, IsReticle: false })
        .Min(item => (double?)item.Ocular!.ApparentFieldAtLongestDeg) is { } narrowest ? RemarkValue.Degrees(name, narrowest) : null;

    /// <summary>The heaviest that is ever in a focuser, as far as masses are known; null where none is, or one that is bought is not.</summary>
    private static RemarkValue? HeaviestIn(Kit kit, string name) => kit.Purchases.All(item => item.MassGrams is not null)
        && kit.Ladders.SelectMany(ladder => ladder.Usable).Max(view => (double?)KnownGrams(view)) is > 0 and var heaviest
            ? RemarkValue.Grams(name, heaviest) : null;

    private static double KnownGrams(KitView view) => (view.Eyepiece.MassGrams ?? 0) + (view.Barlow?.MassGrams ?? 0);
}
