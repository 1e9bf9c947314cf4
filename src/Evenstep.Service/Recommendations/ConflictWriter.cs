using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Wording;

namespace Evenstep.Service.Recommendations;

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
        RemarkValue[] values = [.. remark.Values, .. LimitsOf(asked)];
        var together = new Sentence(conflicts.Together.Length == 1 ? "conflict/alone" : "conflict/together", []);
        return new RemarkAnswer
        {
            Code = remark.Code,
            Text = new Sentence(
                $"conflict/{remark.Code}{(demand is Demand.MustFrame { Framing.Name: not null } ? "/named" : "")}",
                [.. values, RemarkValue.Of("together", together), RemarkValue.Of("remedy", Remedies.InWords(asked, conflicts.Nearest))]),
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
    ];

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
        Budget = nearest.Budget is { } budget ? Rounded.Money(budget) : null,
        MaxPurchases = nearest.MaxPurchases,
        MaxBarlows = nearest.MaxBarlows,
        AllowedOverlaps = nearest.AllowedOverlaps,
        MustFrame = [.. problem.Demands.MustFrame.Zip(nearest.WidthDeg, (framing, width) => new NearestFramingAnswer { Name = framing.Name, WidthDeg = width })],
    };
}
