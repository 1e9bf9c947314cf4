using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Targets;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>A request for a recommendation as its JSON says it; null for what is missing or faulty.</summary>
[Schema("RecommendationRequest", "A telescope, a catalogue and a budget; all the rest is optional, and null means the default.")]
internal sealed record RecommendationRequest
{
    [FieldsOf<KitRequest>(Required = [nameof(KitRequest.Catalogue)])]
    public KitRequest Kit { get; init; } = new();

    [Part<LimitsRequest>("What must not be exceeded.", IsRequired = true)] public LimitsRequest? Limits { get; init; }
    [Part<PreferencesRequest>("How the observer likes a kit to be.")] public PreferencesRequest? Preferences { get; init; }
    [Part<ExplainRequest>("What else the answer is to say.")] public ExplainRequest? Explain { get; init; }
}

[Schema("Limits", "What must not be exceeded.")]
internal sealed record LimitsRequest
{
    [Money(nameof(Bounds.Budget), "The most that all purchases together may cost.", IsRequired = true)] public decimal? Budget { get; init; }
    [Whole(0, Limits.MostPurchases, "The most items to buy.", Default = "3")] public int? MaxPurchases { get; init; }
    [Whole(0, Limits.MostBarlows, "The most Barlows among them.", Default = "1")] public int? MaxBarlows { get; init; }
    [Money(nameof(Bounds.Price), "The most that one item may cost.")] public decimal? MaxPricePerItem { get; init; }

    [Number(nameof(Bounds.MassGrams), "g", "The most that one item may weigh, in grams, where its mass is known.")]
    public double? MaxItemMassGrams { get; init; }

    [Whole(0, Limits.MostOverlaps, "How many pairs of views may repeat one another through a purchase.", Default = "0")]
    public int? AllowedOverlaps { get; init; }
}

/// <summary>Whether a kind of item may be bought.</summary>
internal enum Allowing
{
    Allow,
    Avoid,
}

[Schema("Preferences", "How the observer likes a kit to be, and what it must have.")]
internal sealed record PreferencesRequest
{
    private const int MostMustInclude = 20;

    [Choice<Prefer>(
        "What decides between sets whose steps are equally good: comfortable views, then what is named, then the price; with `low-price` the price alone.",
        Default = "\"comfort\"")]
    public Prefer? Prefer { get; init; }

    [Number(nameof(Bounds.LeastStep), "", "Powers closer than this ratio repeat one another.", Default = "1.15")] public double? LeastStep { get; init; }
    [Number(nameof(Bounds.EnoughStep), "", "A step of up to this ratio is as good as none.", Default = "1.5")] public double? EnoughStep { get; init; }

    [Number(nameof(Bounds.ApparentFieldDeg), "degrees", "The narrowest apparent field put up with, in degrees.")]
    public double? LeastApparentFieldDeg { get; init; }

    [Choice<Allowing>("Whether Barlows may be bought.", Default = "\"allow\"")] public Allowing? Barlows { get; init; }
    [Choice<Allowing>("Whether zooms may be bought.", Default = "\"avoid\"")] public Allowing? Zooms { get; init; }

    [List(0, MostMustInclude)]
    [Text("Ids of items that must be bought.", Most = ItemRequest.MostIdCharacters, Default = "[]")]
    public IReadOnlyList<string?>? MustInclude { get; init; }

    [List(0, PurchaseProblem.MostCatalogueItems)]
    [Text("Ids of items not to be bought; unknown ones are ignored.", Most = ItemRequest.MostIdCharacters, Default = "[]")]
    public IReadOnlyList<string?>? Exclude { get; init; }

    [List(0, PurchaseProblem.MostDemands)]
    [Part<FramingRequest>("What must fit into some usable view at once.", Default = "[]")]
    public IReadOnlyList<FramingRequest?>? MustFrame { get; init; }

    [Part<ReticleRequest>("Asks for a reticle eyepiece.")] public ReticleRequest? Reticle { get; init; }
}

[Schema("ReticleWish", "A reticle eyepiece is wanted.")]
internal sealed record ReticleRequest
{
    [Number(nameof(Bounds.Power), "", "The least power that a reticle eyepiece of the kit must give.", IsRequired = true)]
    public double? LeastPower { get; init; }
}

/// <summary>How the items that are no candidates are reported.</summary>
internal enum ExcludedAs
{
    Count,
    List,
}

[Schema("Explain", "What else the answer is to say.")]
internal sealed record ExplainRequest
{
    private const string OnlyOfRecommendations = "Choices, spending curves and buying paths leave it aside.";

    [Flag("Asks for the best plan without each purchase. Each takes about as long as the plan itself. " + OnlyOfRecommendations, Default = "false")]
    public bool? IfUnavailable { get; init; }

    [Choice<ExcludedAs>("Whether the items that are no candidates are counted by reason, or listed. " + OnlyOfRecommendations, Default = "\"count\"")]
    public ExcludedAs? Excluded { get; init; }

    [FlagOrList(TargetRequest.MostTargets)]
    [Part<TargetRequest>("Asks which view is for what: true for the targets that `/v1/targets` lists, or targets of your own.", Default = "false")]
    public FlagOrList<TargetRequest>? Targets { get; init; }

    [Flag("Asks for a second, independent proof. It may take longer than the first. " + OnlyOfRecommendations, Default = "false")]
    public bool? Certify { get; init; }

    [Flag(
        "Asks how far seeing, pupil and budget may be otherwise without another purchase. It takes many times as long as the plan. " + OnlyOfRecommendations,
        Default = "false")]
    public bool? HoldsWhile { get; init; }
}
