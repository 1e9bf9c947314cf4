using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Answering.Kits;

/// <summary>The tables of fields that every request about a kit has.</summary>
internal static class KitFields
{
    public static readonly Field<double?> SeeingArcsec = Make.Number(
        "seeingArcsec", Bounds.SeeingArcsec, "arcseconds", "The width of a star's image that the air allows, in arcseconds.").Defaulting("1.5");

    public static readonly Field<SiteRequest> Site = Make.Of(
        "site",
        new ObjectShape<SiteRequest>("Site", "Where one observes.", [SeeingArcsec], values => new SiteRequest { SeeingArcsec = values.Of(SeeingArcsec) }),
        "Where one observes.");

    public static readonly Field<IReadOnlyList<ItemRequest?>> Owned = Make.ListOf(
        "owned", ItemFields.Owned, 0, PurchaseProblem.MostOwned, "The eyepieces, zooms and Barlows there are already.").Defaulting("[]");

    public static readonly Field<CatalogueRequest> Catalogue = Make.Of("catalogue", CatalogueFields.InRequest, "What there is to buy.");

    public static readonly Field<string?> FramingName = Make.Name("name", "What is to be framed.");
    public static readonly Field<double?> WidthDeg = Make.Number("widthDeg", Bounds.WidthDeg, "degrees", "The least true field, in degrees.");
    public static readonly Field<string?> InTelescope = Make.Name("telescope", "The name or id of the telescope it must be in; without one, any.");

    public static readonly Field<IReadOnlyList<FramingRequest?>> MustFrame = Make.ListOf(
        "mustFrame",
        new ObjectShape<FramingRequest>(
            "Framing",
            "Something that must fit into some usable view at once.",
            [FramingName, WidthDeg.Required(), InTelescope],
            values => new FramingRequest { Name = values.Of(FramingName), WidthDeg = values.Of(WidthDeg), Telescope = values.Of(InTelescope) }),
        0,
        PurchaseProblem.MostDemands,
        "What must fit into some usable view at once.").Defaulting("[]");

    public static readonly Field<double?> LeastStep = Make.Number("leastStep", Bounds.LeastStep, "", "Powers closer than this ratio repeat one another.").Defaulting("1.15");
    public static readonly Field<double?> EnoughStep = Make.Number("enoughStep", Bounds.EnoughStep, "", "A step of up to this ratio is as good as none.").Defaulting("1.5");

    public static readonly Field<double?> LeastApparentFieldDeg = Make.Number(
        "leastApparentFieldDeg", Bounds.ApparentFieldDeg, "degrees", "The narrowest apparent field put up with, in degrees.");

    public static KitRequest BuildKit(Values values) => new()
    {
        Telescopes = values.Of(TelescopeFields.Telescopes),
        Observer = values.Of(ObserverFields.Observer),
        Site = values.Of(Site),
        Owned = values.Of(Owned),
        Catalogue = values.Of(Catalogue),
    };
}
