using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Content;

/// <summary>The tables of fields of telescopes.</summary>
internal static class TelescopeFields
{
    public static readonly Field<string?> Id = Make.Name("id", "The telescope's id in the stored catalogue.", ItemFields.MostIdCharacters);
    public static readonly Field<string?> Name = Make.Name("name", "What to call it; without one, `telescope 1` by its place.");
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
                "TelescopeById", "A telescope that the stored catalogue lists.", [Id.Required(), WithIncluded, PowerRange], Build, "one by `id`"),
            "id",
            new ObjectShape<TelescopeRequest>(
                "TelescopeInFull",
                "A telescope in full.",
                [Name, ApertureMm.Required(), FocalLengthMm.Required(), FocuserBarrel.Required(), PowerRange, Make.Absent(Id.Name, "Only of a telescope that a stored catalogue lists.")],
                Build,
                "a telescope given in full")),
        1,
        PurchaseProblem.MostTelescopes,
        "The telescopes to equip.");

    private static TelescopeRequest Build(Values values) => new()
    {
        Id = values.Of(Id),
        WithIncluded = values.Of(WithIncluded),
        Name = values.Of(Name),
        ApertureMm = values.Of(ApertureMm),
        FocalLengthMm = values.Of(FocalLengthMm),
        FocuserBarrel = values.Of(FocuserBarrel),
        PowerRange = values.Of(PowerRange),
    };
}
