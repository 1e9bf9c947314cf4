using Evenstep.Service.Contract.Fields;
using static Evenstep.Service.Contract.Fields.FieldTable<Evenstep.Service.Catalogues.Content.TelescopeRequest>;

namespace Evenstep.Service.Catalogues.Content;

/// <summary>Which fields of a telescope go together.</summary>
internal static class TelescopeShapes
{
    /// <summary>What makes a telescope.</summary>
    private static readonly Field[] Optics =
        [.. Required(nameof(TelescopeRequest.ApertureMm), nameof(TelescopeRequest.FocalLengthMm), nameof(TelescopeRequest.FocuserBarrel))];

    private static readonly Field Id = Of(nameof(TelescopeRequest.Id));
    private static readonly Field Name = Of(nameof(TelescopeRequest.Name));
    private static readonly Field PowerRange = Of(nameof(TelescopeRequest.PowerRange));

    /// <summary>A telescope of a request: by its id in the catalogue, or in full.</summary>
    public static readonly ReferenceOrFullShape<TelescopeRequest> InRequest = new(
        "Telescope",
        new ObjectShape<TelescopeRequest>(
            "TelescopeById",
            "A telescope that the stored catalogue lists.",
            [Id.Required(), Of(nameof(TelescopeRequest.WithIncluded)), PowerRange],
            "one by `id`"),
        Id.Name,
        new ObjectShape<TelescopeRequest>(
            "TelescopeInFull",
            "A telescope in full.",
            [Name, .. Optics, PowerRange, Make.Absent(Id.Name, "Only of a telescope that a stored catalogue lists.")],
            "a telescope given in full"));

    /// <summary>A telescope that a catalogue lists, with the items packed with it.</summary>
    public static readonly ObjectShape<TelescopeRequest> Listed = new(
        "CatalogueTelescope", "A telescope that the shop sells.", [Id.Required(), Name, .. Optics, Of(nameof(TelescopeRequest.Included))]);
}
