using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Wording;

namespace Evenstep.Service.Recommendations;

/// <summary>Writes why no set of purchases is allowed.</summary>
internal static class ConflictWriter
{
    public static ConflictsAnswer Write(PurchaseProblem problem, Conflicts conflicts) => new()
    {
        Demands =
        [
            .. conflicts.NoCandidates.Select(one => NoCandidate(problem, one)),
            .. conflicts.Together.Select(one => Together(one, conflicts.Together.Length == 1)),
        ],
        Nearest = NearestOf(problem, conflicts.Nearest),
    };

    private static RemarkAnswer NoCandidate(PurchaseProblem problem, Exclusion exclusion)
    {
        var because = ExclusionDetail.Of(problem, exclusion);
        RemarkValue[] values = [RemarkValue.Of("itemId", exclusion.Item.Id), RemarkValue.Of("sentence", because.Text)];
        because.Values.Insert(0, "itemId", exclusion.Item.Id);
        return because with { Text = Phrase.Sentence("conflict/no-candidate", values) };
    }

    private static RemarkAnswer Together(Demand demand, bool isAlone)
    {
        var remark = RemarkOf(demand);
        var key = $"conflict/{remark.Code}{(demand is Demand.MustFrame { Framing.Name: not null } ? "/named" : "")}";
        var together = isAlone ? "" : English.Sentences["conflict/together"];
        return new RemarkAnswer
        {
            Code = remark.Code,
            Text = Phrase.Sentence(key, [.. remark.Values, RemarkValue.Of("together", together)]),
            Values = Phrase.ValuesOf(remark.Values),
        };
    }

    private static Remark RemarkOf(Demand demand) => demand switch
    {
        Demand.MustInclude include => new Remark("must-include", [RemarkValue.Of("itemId", include.Item.Id)]),
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
