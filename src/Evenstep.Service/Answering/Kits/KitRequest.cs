using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Answering.Kits;

/// <summary>What every request says of the observer's situation; null for what is missing or faulty.</summary>
internal sealed record KitRequest
{
    [List(1, PurchaseProblem.MostTelescopes)]
    [Shaped(typeof(TelescopeShapes), nameof(TelescopeShapes.InRequest), "The telescopes to equip.", IsRequired = true)]
    public IReadOnlyList<TelescopeRequest?>? Telescopes { get; init; }

    [Part<ObserverRequest>("Who looks.")] public ObserverRequest? Observer { get; init; }
    [Part<SiteRequest>("Where one observes.")] public SiteRequest? Site { get; init; }

    [List(0, PurchaseProblem.MostOwned)]
    [Shaped(typeof(ItemShapes), nameof(ItemShapes.Owned), "The eyepieces, zooms and Barlows there are already.", Default = "[]")]
    public IReadOnlyList<ItemRequest?>? Owned { get; init; }

    [Shaped(typeof(CatalogueShapes), nameof(CatalogueShapes.InRequest), "What there is to buy.")]
    public CatalogueRequest? Catalogue { get; init; }
}

[Schema("Observer", "Who looks: the eye, the spectacles, and what they like to look at.")]
internal sealed record ObserverRequest
{
    private const int MostObserved = 20;

    [Number(nameof(Bounds.AgeYears), "years", "Age in years, from which the dark-adapted pupil is estimated.")] public double? Age { get; init; }
    [Number(nameof(Bounds.PupilMm), "mm", "The measured dark-adapted pupil, in mm; it goes before the age.")] public double? PupilMm { get; init; }
    [Flag("Whether spectacles are worn at the telescope.", Default = "false")] public bool? WearsSpectacles { get; init; }

    [Number(nameof(Bounds.CylinderDioptres), "dioptres", "The cylinder of the prescription, in dioptres; its sign does not matter. Only with spectacles.")]
    public double? AstigmatismDioptres { get; init; }

    [Number(nameof(Bounds.EyeReliefMm), "mm", "The least eye relief put up with, in mm, for owned and bought alike.")]
    public double? LeastEyeReliefMm { get; init; }

    [List(0, MostObserved)]
    [Choice<Interest>("What the observer likes to look at; without any, all of it.", Default = "[]")]
    public IReadOnlyList<Interest?>? Observes { get; init; }
}

[Schema("Site", "Where one observes.")]
internal sealed record SiteRequest
{
    [Number(nameof(Bounds.SeeingArcsec), "arcseconds", "The width of a star's image that the air allows, in arcseconds.", Default = "1.5")]
    public double? SeeingArcsec { get; init; }
}

/// <summary>What must fit into some view at once.</summary>
[Schema("Framing", "Something that must fit into some usable view at once.")]
internal sealed record FramingRequest
{
    [Text("What is to be framed.")] public string? Name { get; init; }
    [Number(nameof(Bounds.WidthDeg), "degrees", "The least true field, in degrees.", IsRequired = true)] public double? WidthDeg { get; init; }
    [Text("The name or id of the telescope it must be in; without one, any.")] public string? Telescope { get; init; }
}
