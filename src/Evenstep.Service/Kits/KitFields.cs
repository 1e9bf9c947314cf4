using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Catalogues;
using Evenstep.Service.Reading;

namespace Evenstep.Service.Kits;

/// <summary>The tables of fields that every request about a kit has.</summary>
internal static class KitFields
{
    public static readonly Field<string?> TelescopeId = Make.Name("id", "The telescope's id in the stored catalogue.", ItemFields.MostIdCharacters);
    public static readonly Field<string?> TelescopeName = Make.Name("name", "What to call it; without one, `telescope 1` by its place.");
    public static readonly Field<double?> ApertureMm = Make.Number("apertureMm", Bounds.ApertureMm, "mm", "Aperture, in mm.");
    public static readonly Field<double?> FocalLengthMm = Make.Number("focalLengthMm", Bounds.TelescopeFocalLengthMm, "mm", "Focal length, in mm.");
    public static readonly Field<Barrel?> FocuserBarrel = Make.Choice<Barrel>("focuserBarrel", "The barrel that the focuser takes, in inches.");

    public static readonly Field<bool?> WithIncluded = Make.Flag(
        "withIncluded", "Whether the items packed with it count as owned.").Defaulting("true");

    public static readonly Field<double?> Lowest = Make.Number("lowest", Bounds.Power, "", "The lowest power of use.");
    public static readonly Field<double?> Highest = Make.Number("highest", Bounds.Power, "", "The highest power of use: at least 1.5 times the lowest.");

    public static readonly Field<PowerRangeRequest> PowerRange = Make.Of(
        "powerRange",
        new ObjectShape<PowerRangeRequest>(
            "PowerRangeWish",
            "Overrides either end of the power range that pupil, focuser, aperture and seeing set.",
            [Lowest, Highest],
            values => new PowerRangeRequest { Lowest = values.Of(Lowest), Highest = values.Of(Highest) }),
        "Overrides either end of the power range.");

    public static readonly Field<IReadOnlyList<TelescopeRequest?>> Telescopes = Make.ListOf(
        "telescopes",
        new ReferenceOrFullShape<TelescopeRequest>(
            "Telescope",
            new ObjectShape<TelescopeRequest>(
                "TelescopeById", "A telescope that the stored catalogue lists.", [TelescopeId.Required(), WithIncluded, PowerRange], BuildTelescope),
            "id",
            new ObjectShape<TelescopeRequest>(
                "TelescopeInFull",
                "A telescope in full.",
                [TelescopeName, ApertureMm.Required(), FocalLengthMm.Required(), FocuserBarrel.Required(), PowerRange],
                BuildTelescope)),
        1,
        PurchaseProblem.MostTelescopes,
        "The telescopes to equip.");

    public static readonly Field<double?> Age = Make.Number("age", Bounds.AgeYears, "years", "Age in years, from which the dark-adapted pupil is estimated.");
    public static readonly Field<double?> PupilMm = Make.Number("pupilMm", Bounds.PupilMm, "mm", "The measured dark-adapted pupil, in mm; it goes before the age.");
    public static readonly Field<bool?> WearsSpectacles = Make.Flag("wearsSpectacles", "Whether spectacles are worn at the telescope.").Defaulting("false");

    public static readonly Field<double?> AstigmatismDioptres = Make.Number(
        "astigmatismDioptres", Bounds.CylinderDioptres, "dioptres", "The cylinder of the prescription, in dioptres; its sign does not matter. Only with spectacles.");

    public static readonly Field<double?> LeastEyeReliefMm = Make.Number(
        "leastEyeReliefMm", Bounds.EyeReliefMm, "mm", "The least eye relief put up with, in mm, for owned and bought alike.");

    public static readonly Field<IReadOnlyList<Interest?>> Observes = Make.ListOf(
        "observes", new ChoiceShape<Interest>(), 0, 20, "What the observer likes to look at; without any, all of it.").Defaulting("[]");

    public static readonly Field<ObserverRequest> Observer = Make.Of(
        "observer",
        new ObjectShape<ObserverRequest>(
            "Observer",
            "Who looks: the eye, the spectacles, and what they like to look at.",
            [Age, PupilMm, WearsSpectacles, AstigmatismDioptres, LeastEyeReliefMm, Observes],
            values => new ObserverRequest
            {
                Age = values.Of(Age),
                PupilMm = values.Of(PupilMm),
                WearsSpectacles = values.Of(WearsSpectacles),
                AstigmatismDioptres = values.Of(AstigmatismDioptres),
                LeastEyeReliefMm = values.Of(LeastEyeReliefMm),
                Observes = values.Of(Observes),
            }),
        "Who looks.");

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

    public static TelescopeRequest BuildTelescope(Values values) => new()
    {
        Id = values.Of(TelescopeId),
        WithIncluded = values.Of(WithIncluded),
        Name = values.Of(TelescopeName),
        ApertureMm = values.Of(ApertureMm),
        FocalLengthMm = values.Of(FocalLengthMm),
        FocuserBarrel = values.Of(FocuserBarrel),
        PowerRange = values.Of(PowerRange),
    };

    public static KitRequest BuildKit(Values values) => new()
    {
        Telescopes = values.Of(Telescopes),
        Observer = values.Of(Observer),
        Site = values.Of(Site),
        Owned = values.Of(Owned),
        Catalogue = values.Of(Catalogue),
    };
}
