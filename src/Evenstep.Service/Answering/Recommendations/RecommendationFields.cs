using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Targets;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>The tables of fields of a request for a recommendation.</summary>
internal static class RecommendationFields
{
    private const int MostMustInclude = 20;

    public static readonly TextShape ItemId = Make.OneLine(ItemFields.MostIdCharacters);

    public static readonly Field<decimal?> Budget = Make.Money("budget", Bounds.Budget, "The most that all purchases together may cost.");
    public static readonly Field<int?> MaxPurchases = Make.Whole("maxPurchases", 0, Limits.MostPurchases, "The most items to buy.").Defaulting("3");
    private static readonly Field<int?> MaxBarlows = Make.Whole("maxBarlows", 0, Limits.MostBarlows, "The most Barlows among them.").Defaulting("1");
    private static readonly Field<decimal?> MaxPricePerItem = Make.Money("maxPricePerItem", Bounds.Price, "The most that one item may cost.");
    private static readonly Field<double?> MaxItemMassGrams = Make.Number("maxItemMassGrams", Bounds.MassGrams, "g", "The most that one item may weigh, in grams, where its mass is known.");

    private static readonly Field<int?> AllowedOverlaps = Make.Whole(
        "allowedOverlaps", 0, Limits.MostOverlaps, "How many pairs of views may repeat one another through a purchase.").Defaulting("0");

    private static readonly Field<LimitsRequest> LimitsField = Make.Of(
        "limits",
        new ObjectShape<LimitsRequest>(
            "Limits",
            "What must not be exceeded.",
            [Budget.Required(), MaxPurchases, MaxBarlows, MaxPricePerItem, MaxItemMassGrams, AllowedOverlaps],
            values => new LimitsRequest
            {
                Budget = values.Of(Budget),
                MaxPurchases = values.Of(MaxPurchases),
                MaxBarlows = values.Of(MaxBarlows),
                MaxPricePerItem = values.Of(MaxPricePerItem),
                MaxItemMassGrams = values.Of(MaxItemMassGrams),
                AllowedOverlaps = values.Of(AllowedOverlaps),
            }),
        "What must not be exceeded.");

    public static readonly Field<Prefer?> PreferField = Make.Choice<Prefer>(
        "prefer", "What decides between sets of purchases whose steps are equally good.").Defaulting("\"low-price\"");

    public static readonly Field<Allowing?> Barlows = Make.Choice<Allowing>("barlows", "Whether Barlows may be bought.").Defaulting("\"allow\"");
    public static readonly Field<Allowing?> Zooms = Make.Choice<Allowing>("zooms", "Whether zooms may be bought.").Defaulting("\"avoid\"");

    public static readonly Field<IReadOnlyList<string?>> MustInclude = Make.ListOf(
        "mustInclude", ItemId, 0, MostMustInclude, "Ids of items that must be bought.").Defaulting("[]");

    private static readonly Field<IReadOnlyList<string?>> Exclude = Make.ListOf(
        "exclude", ItemId, 0, PurchaseProblem.MostCatalogueItems, "Ids of items not to be bought; unknown ones are ignored.").Defaulting("[]");

    private static readonly Field<double?> LeastPower = Make.Number("leastPower", Bounds.Power, "", "The least power that a reticle eyepiece of the kit must give.");

    private static readonly Field<ReticleRequest> Reticle = Make.Of(
        "reticle",
        new ObjectShape<ReticleRequest>(
            "ReticleWish",
            "A reticle eyepiece is wanted.",
            [LeastPower.Required()],
            values => new ReticleRequest { LeastPower = values.Of(LeastPower) }),
        "Asks for a reticle eyepiece.");

    private static readonly Field<PreferencesRequest> Preferences = Make.Of(
        "preferences",
        new ObjectShape<PreferencesRequest>(
            "Preferences",
            "How the observer likes a kit to be, and what it must have.",
            [PreferField, KitFields.LeastStep, KitFields.EnoughStep, KitFields.LeastApparentFieldDeg, Barlows, Zooms, MustInclude, Exclude, KitFields.MustFrame, Reticle],
            values => new PreferencesRequest
            {
                Prefer = values.Of(PreferField),
                LeastStep = values.Of(KitFields.LeastStep),
                EnoughStep = values.Of(KitFields.EnoughStep),
                LeastApparentFieldDeg = values.Of(KitFields.LeastApparentFieldDeg),
                Barlows = values.Of(Barlows),
                Zooms = values.Of(Zooms),
                MustInclude = values.Of(MustInclude),
                Exclude = values.Of(Exclude),
                MustFrame = values.Of(KitFields.MustFrame),
                Reticle = values.Of(Reticle),
            }),
        "How the observer likes a kit to be.");

    private static readonly Field<ExcludedAs?> Excluded = Make.Choice<ExcludedAs>(
        "excluded", "Whether the items that are no candidates are counted by reason, or listed.").Defaulting("\"count\"");

    private static readonly Field<bool?> Certify = Make.Flag(
        "certify", "Asks for a second, independent proof. It may take longer than the first.").Defaulting("false");

    private static readonly Field<bool?> IfUnavailable = Make.Flag(
        "ifUnavailable", "Asks for the best plan without each purchase. Each takes about as long as the plan itself.").Defaulting("false");

    private static readonly Field<ExplainRequest> Explain = Make.Of(
        "explain",
        new ObjectShape<ExplainRequest>(
            "Explain",
            "What else the answer is to say.",
            [
                IfUnavailable,
                Excluded,
                TargetFields.Targets,
                Certify,
            ],
            values => new ExplainRequest
            {
                Excluded = values.Of(Excluded),
                Certify = values.Of(Certify),
                IfUnavailable = values.Of(IfUnavailable),
                Targets = values.Of(TargetFields.Targets),
            }),
        "What else the answer is to say.");

    /// <summary>What every request that asks for a plan has.</summary>
    public static readonly Field[] OfPlanning =
        [TelescopeFields.Telescopes.Required(), ObserverFields.Observer, KitFields.Site, KitFields.Owned, KitFields.Catalogue.Required(), LimitsField.Required(), Preferences, Explain];

    public static readonly ObjectShape<RecommendationRequest> Body = new(
        "RecommendationRequest",
        "A telescope, a catalogue and a budget; all the rest is optional, and null means the default.",
        OfPlanning,
        Build);

    /// <summary>The request that the values of <see cref="OfPlanning"/> make.</summary>
    public static RecommendationRequest Build(Values values) => new()
    {
        Kit = KitFields.BuildKit(values),
        Limits = values.Of(LimitsField),
        Preferences = values.Of(Preferences),
        Explain = values.Of(Explain),
    };
}
