using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>A usable view reduced to what plans are made of: where it lies on its telescope's axis, and what it repeats.</summary>
/// <param name="Eyepiece">The eyepiece or zoom looked into.</param>
/// <param name="Barlow">The Barlow it is looked through, or null.</param>
/// <param name="IsZoom">Whether it has a stretch of powers.</param>
/// <param name="LnCutPower">The logarithm of the power, cut to the range; of a zoom's lowest.</param>
/// <param name="TrueFieldDeg">In degrees.</param>
/// <param name="Reach">The positions it reaches.</param>
public readonly record struct Showing(Item Eyepiece, Item? Barlow, bool IsZoom, double LnCutPower, double TrueFieldDeg, Reach Reach)
{
    public static Showing Of(Item eyepiece, Item? barlow, in View view) =>
        new(eyepiece, barlow, view.IsZoom, view.LnCutPower, view.TrueFieldDeg, new Reach(view.From, view.To));
}
