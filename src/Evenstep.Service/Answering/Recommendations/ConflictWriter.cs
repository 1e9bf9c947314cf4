using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>Writes why no set of purchases is allowed.</summary>
internal static class ConflictWriter
{
    public static ConflictsAnswer Write(RecommendationAsked asked, Conflicts conflicts) => new()
    {
        Demands =
        [
            .. conflicts.NoCandidates.Select(one => NoCandidate(asked, one)),
            .. conflicts.Together.Select(one => Together(one, asked, conflicts)),
        ],
        Nearest = NearestOf(asked.Problem, conflicts.Nearest),
        Undecided = [.. UndecidedOf(conflicts)],
    };

    private static RemarkAnswer NoCandidate(RecommendationAsked asked, Exclusion exclusion)
    {
        var because = ExclusionDetail.Of(asked, exclusion);
        RemarkValue[] item = [RemarkValue.Of("itemId", exclusion.Item.Id), NameOf(exclusion.Item)];
        return new RemarkAnswer
        {
            Code = because.Code,
            Text = new Sentence("conflict/no-candidate", [.. item, RemarkValue.Of("sentence", because.Text)]),
            Values = Phrase.ValuesOf([.. item, .. because.Text.Values]),
        };
    }

    private static RemarkAnswer Together(Demand demand, RecommendationAsked asked, Conflicts conflicts)
    {
        var remark = RemarkOf(demand);
        var limits = LimitsOf(asked);
        RemarkValue[] values = [.. remark.Values, .. limits];
        var together = new Sentence(conflicts.Together.Length == 1 ? "conflict/alone" : "conflict/together", []);
        return new RemarkAnswer
        {
            Code = remark.Code,
            Text = new Sentence(
                $"conflict/{remark.Code}{(demand is Demand.MustFrame { Framing.Name: not null } ? "/named" : "")}",
                [
                    .. values, RemarkValue.Of("itemLimits", ItemLimits(limits, asked.Problem.Limits)), RemarkValue.Of("together", together),
                    RemarkValue.Of("remedy", Remedies.InWords(asked, conflicts.Nearest))
                ]),
            Values = Phrase.ValuesOf(values),
        };
    }

    private static RemarkValue[] LimitsOf(RecommendationAsked asked) =>
    [
        RemarkValue.Of("budget", asked.Problem.Limits.Budget),
        RemarkValue.Of(Sentence.Currency, asked.Catalogue.Currency),
        RemarkValue.Of("maxPurchases", asked.Problem.Limits.MaxPurchases),
        RemarkValue.Of("maxBarlows", asked.Problem.Limits.MaxBarlows),
        RemarkValue.Of("allowedOverlaps", asked.Problem.Limits.AllowedOverlaps),
        RemarkValue.Of("maxPricePerItem", asked.Problem.Limits.MaxPricePerItem),
        Grams("maxItemMassGrams", asked.Problem.Limits.MaxItemMassGrams),
    ];

    private static RemarkValue Grams(string name, double? grams) => new(name, grams, 1);

    /// <summary>What one item may cost and weigh, where that is limited, as a part of a sentence.</summary>
    private static Sentence ItemLimits(RemarkValue[] limits, Limits asked)
    {
        var key = (asked.MaxPricePerItem, asked.MaxItemMassGrams) switch
        {
            (null, null) => "none",
            ({ }, null) => "price",
            (null, { }) => "mass",
            _ => "both",
        };
        return new Sentence($"conflict/item-limits/{key}", [.. limits]);
    }

    /// <summary>What the shop calls it.</summary>
    private static RemarkValue NameOf(Item item) => RemarkValue.Of("name", item.Name ?? item.Id);

    private static Remark RemarkOf(Demand demand) => demand switch
    {
        Demand.MustInclude include => new Remark("must-include", [RemarkValue.Of("itemId", include.Item.Id), NameOf(include.Item)]),
        Demand.MustFrame frame => new Remark("must-frame",
        [
            RemarkValue.Of("name", frame.Framing.Name ?? ""),
            RemarkValue.Degrees("widthDeg", frame.Framing.WidthDeg),
            RemarkValue.Of("index", frame.Index),
        ]),
        Demand.Reticle reticle => new Remark("reticle", [RemarkValue.Power("leastPower", reticle.LeastPower)]),
        _ => throw new ArgumentOutOfRangeException(nameof(demand), demand, "An unknown demand."),
    };

    private static NearestAnswer NearestOf(PurchaseProblem problem, NearestLimits nearest) => new()
    {
        Budget = nearest.Budget.Value is { } budget ? Rounded.Money(budget) : null,
        MaxPurchases = nearest.MaxPurchases.Value,
        MaxBarlows = nearest.MaxBarlows.Value,
        AllowedOverlaps = nearest.AllowedOverlaps.Value,
        MaxPricePerItem = nearest.MaxPricePerItem.Value is { } price ? Rounded.Money(price) : null,
        MaxItemMassGrams = nearest.MaxItemMassGrams.Value,
        MustFrame =
            [.. problem.Demands.MustFrame.Zip(nearest.WidthDeg, (framing, width) => new NearestFramingAnswer { Name = framing.Name, WidthDeg = width.Value })],
    };

    /// <summary>What the work did not suffice for, in the words of the request; a framing by its place.</summary>
    private static IEnumerable<string> UndecidedOf(Conflicts conflicts)
    {
        var nearest = conflicts.Nearest;
        (string Name, bool IsDecided)[] all =
        [
            ("demands", conflicts.IsTogetherDecided),
            ("budget", nearest.Budget.IsDecided),
            ("maxPurchases", nearest.MaxPurchases.IsDecided),
            ("maxBarlows", nearest.MaxBarlows.IsDecided),
            ("allowedOverlaps", nearest.AllowedOverlaps.IsDecided),
            ("maxPricePerItem", nearest.MaxPricePerItem.IsDecided),
            ("maxItemMassGrams", nearest.MaxItemMassGrams.IsDecided),
            .. nearest.WidthDeg.Select((width, index) => ($"mustFrame/{index}", width.IsDecided)),
        ];
        return all.Where(one => !one.IsDecided).Select(one => one.Name);
    }
}
