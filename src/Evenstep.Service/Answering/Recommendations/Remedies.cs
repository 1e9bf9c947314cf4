using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>What a person could change, one thing at a time, to make a set of purchases possible.</summary>
internal static class Remedies
{
    private const string None = "no-single-change-helps";
    private const string Undecided = "single-changes-undecided";

    /// <summary>A note for each, or that there is none; and that some are not decided, if so.</summary>
    public static IEnumerable<Remark> Of(RecommendationAsked asked, Conflicts conflicts)
    {
        var known = Known(asked, conflicts.Nearest);
        return conflicts.Nearest.IsDecided
            ? known.DefaultIfEmpty(new Remark(None, []) { Variant = ConflictCauses.Of(asked.Problem, conflicts).AreLimits ? "limits" : null })
            : known.Append(new Remark(Undecided, []));
    }

    /// <summary>All of them as the end of a sentence.</summary>
    public static Sentence InWords(RecommendationAsked asked, NearestLimits nearest)
    {
        Sentence[] remedies = [.. Known(asked, nearest).Select(remedy => new Sentence($"conflict/remedy/{remedy.Code}", remedy.Values))];
        var key = (remedies.Length, nearest.IsDecided) switch
        {
            (0, true) => "none",
            (0, false) => "undecided",
            (1, true) => "one",
            (1, false) => "one-known",
            _ => "any",
        };
        return new Sentence($"conflict/remedies/{key}", [RemarkValue.Of("remedies", remedies)]);
    }

    private static IEnumerable<Remark> Known(RecommendationAsked asked, NearestLimits nearest)
    {
        Remark?[] remedies =
        [
            Remedy("larger-budget-helps", "budget", nearest.Budget.Value, RemarkValue.Of(Sentence.Currency, asked.Catalogue.Currency)),
            Remedy("other-max-purchases-helps", "maxPurchases", nearest.MaxPurchases.Value),
            Remedy("other-max-barlows-helps", "maxBarlows", nearest.MaxBarlows.Value),
            Remedy("more-overlaps-help", "allowedOverlaps", nearest.AllowedOverlaps.Value),
            Remedy(
                "larger-max-price-per-item-helps", "maxPricePerItem", nearest.MaxPricePerItem.Value,
                RemarkValue.Of(Sentence.Currency, asked.Catalogue.Currency)),
            nearest.MaxItemMassGrams.Value is { } grams
                ? new Remark("larger-max-item-mass-helps", [new RemarkValue("maxItemMassGrams", RoundedUp(grams), 1)])
                : null,
            .. nearest.WidthDeg.Select((width, i) => width.Value is { } possible ? NarrowerFrame(asked.Problem.Demands.MustFrame[i], possible) : null),
        ];
        return remedies.OfType<Remark>();
    }

    private static Remark? Remedy(string code, string name, object? value, params ReadOnlySpan<RemarkValue> more) =>
        value is null ? null : new Remark(code, [RemarkValue.Of(name, value), .. more]);

    /// <summary>To a tenth of a gram, lest a limit as it is read be too low.</summary>
    private static double RoundedUp(double grams) => Math.Ceiling(10 * grams * (1 - Tolerance.Value)) / 10;

    private static Remark NarrowerFrame(FramingDemand framing, double possible) => new("narrower-frame-helps",
    [
        RemarkValue.Of("name", framing.Name ?? ""),
        RemarkValue.Degrees("askedDeg", framing.WidthDeg),
        RemarkValue.Degrees("widthDeg", possible),
    ]);
}
