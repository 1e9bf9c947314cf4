using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>A view with the items that make it, and why it is of no use, if so.</summary>
/// <param name="Eyepiece">The eyepiece or zoom looked into.</param>
/// <param name="Barlow">The Barlow it is looked through, or null.</param>
/// <param name="View">The optics of it.</param>
/// <param name="NotUsableBecause">Null for a usable view.</param>
/// <param name="NeedsPurchase">Whether the eyepiece or the Barlow is being bought.</param>
public sealed record KitView(Item Eyepiece, Item? Barlow, View View, NotUsable? NotUsableBecause, bool NeedsPurchase)
{
    public bool IsUsable => NotUsableBecause is null;

    /// <summary>What plans make of it.</summary>
    public Showing Showing { get; } = Showing.Of(Eyepiece, Barlow, View);

    public Reach Reach => Showing.Reach;

    /// <summary>Whether the item is the eyepiece looked into, or the Barlow it is looked through.</summary>
    public bool Needs(Item item) => item.Equals(Eyepiece) || item.Equals(Barlow);
}
