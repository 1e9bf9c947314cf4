using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>Writes why no set of purchases is allowed.</summary>
internal static class ConflictWriter
{
    public static ConflictsAnswer Write(RecommendationAsked asked, Conflicts conflicts)
    {
        var causes = ConflictCauses.Of(asked.Problem, conflicts);
        return new ConflictsAnswer
        {
            Demands =
            [
                .. conflicts.NoCandidates.Select(one => NoCandidate(asked, one)),
                .. causes.Impossible.Select(one => Impossible(one, causes.Most, asked.Problem)),
                .. causes.Together.Select(one => Together(one, causes, asked, conflicts)),
            ],
            Nearest = NearestOf(asked.Problem, conflicts.Nearest),
            Undecided = [.. UndecidedOf(conflicts)],
        };
    }

    private static RemarkAnswer NoCandidate(RecommendationAsked asked, Exclusion exclusion)
    {
        var because = ExclusionDetail.Of(asked, exclusion);
        RemarkValue[] item = RemarkValue.ItemOf(exclusion.Item);
        return new RemarkAnswer
        {
            Code = because.Code,
            Text = new Sentence(
                ExclusionDetail.IsFixed(asked.Problem, exclusion) ? "conflict/no-candidate/fixed" : "conflict/no-candidate",
                [.. item, RemarkValue.Of("sentence", because.Text)]),
            Values = Phrase.ValuesOf([.. item, .. because.Values.Values]),
        };
    }

    /// <summary>What cannot be had whatever the limits.</summary>
    private static RemarkAnswer Impossible(Demand demand, WithoutLimits most, PurchaseProblem problem)
    {
        var remark = RemarkOf(demand);
        var possible = demand switch
        {
            Demand.MustFrame frame => most.WidestFieldDeg(frame.Framing.TelescopeIndex) is { } widest
                ? RemarkValue.Degrees("mostDeg", RoundedDown(widest))
                : null,
            _ => most.ReticlePower() is { } power ? RemarkValue.Power("mostPower", power) : null,
        };
        var key = possible is null ? "nothing" : "impossible";
        RemarkValue[] values = possible is null ? [.. remark.Values] : [.. remark.Values, possible];
        return new RemarkAnswer
        {
            Code = remark.Code,
            Text = InTelescope(demand, new Sentence($"conflict/{remark.Code}/{key}{(IsNamed(demand) ? "/named" : "")}", [.. values]), problem),
            Values = Phrase.ValuesOf(values),
        };
    }

    /// <summary>To a hundredth of a degree, as the nearest framing that can be had: what is read can be asked for.</summary>
    private static double RoundedDown(double degrees) => Math.Floor(100 * degrees * (1 + Tolerance.Value)) / 100;

    private static RemarkAnswer Together(Demand demand, ConflictCauses causes, RecommendationAsked asked, Conflicts conflicts)
    {
        var remark = RemarkOf(demand);
        RemarkValue[] values = [.. remark.Values, .. LimitsOf(asked)];
        var sentence = new Sentence($"conflict/{remark.Code}{(IsNamed(demand) ? "/named" : "")}",
        [
            .. values,
            RemarkValue.Of("together", new Sentence(causes.Together.Length == 1 ? "conflict/alone" : "conflict/together", [])),
            RemarkValue.Of("remedy", causes.AreOne ? Remedies.InWords(asked, conflicts.Nearest) : new Sentence("conflict/alone", [])),
        ]);
        return new RemarkAnswer
        {
            Code = remark.Code,
            Text = InTelescope(demand, sentence, asked.Problem),
            Values = Phrase.ValuesOf(values),
        };
    }

    private static bool IsNamed(Demand demand) => demand is Demand.MustFrame { Framing.Name: not null };

    private static Sentence InTelescope(Demand demand, Sentence sentence, PurchaseProblem problem) =>
        demand is Demand.MustFrame { Framing.TelescopeIndex: { } index } && problem.Telescopes.Length > 1
            ? new Sentence("conflict/in-telescope",
                [RemarkValue.Of("telescope", problem.Telescopes[index].Telescope.Name), RemarkValue.Of("sentence", sentence)])
            : sentence;

    private static RemarkValue[] LimitsOf(RecommendationAsked asked) =>
    [
        RemarkValue.Of("budget", asked.Problem.Limits.Budget),
        RemarkValue.Of(Sentence.Currency, asked.Catalogue.Currency),
        RemarkValue.Of("maxPurchases", asked.Problem.Limits.MaxPurchases),
        RemarkValue.Of("maxBarlows", asked.Problem.Limits.MaxBarlows),
        RemarkValue.Of("allowedOverlaps", asked.Problem.Limits.AllowedOverlaps),
        RemarkValue.Of("maxPricePerItem", asked.Problem.Limits.MaxPricePerItem),
        RemarkValue.Grams("maxItemMassGrams", asked.Problem.Limits.MaxItemMassGrams),
    ];

    private static Remark RemarkOf(Demand demand) => demand switch
    {
        Demand.MustInclude include => new Remark("must-include", [.. RemarkValue.ItemOf(include.Item)]),
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
