using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>Whether something that could be bought instead, or as well, has drawbacks that a plan has not: then it is not offered.</summary>
internal static class OfferedDrawbacks
{
    /// <summary>Whether in every telescope the item alone has no drawback but such as an eyepiece has there that is bought already.</summary>
    public static bool AreThoseOf(Kit kit, Item item) => kit.Ladders.All(ladder =>
    {
        var known = Drawbacks.None;
        foreach (var view in ladder.Usable.Where(view => kit.Purchases.Contains(view.Eyepiece)))
        {
            known |= view.Drawbacks;
        }

        return KitViews.Alone(kit.Problem, ladder.Telescope, item, bought: true)
            .All(view => !view.IsUsable || (view.Drawbacks & ~known) == Drawbacks.None);
    });
}
