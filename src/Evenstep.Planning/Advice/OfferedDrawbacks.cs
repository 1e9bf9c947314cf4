using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>Whether something that could be bought instead, or as well, has drawbacks that a plan has not: then it is not offered.</summary>
internal static class OfferedDrawbacks
{
    /// <summary>Whether every usable view of the item alone has no drawback but such as a view has that is bought already.</summary>
    public static bool AreThoseOf(Kit kit, Item item)
    {
        var known = Drawbacks.None;
        foreach (var view in kit.Ladders.SelectMany(ladder => ladder.Usable).Where(view => view.NeedsPurchase))
        {
            known |= view.Drawbacks;
        }

        return kit.Problem.Telescopes
            .SelectMany(telescope => KitViews.Alone(kit.Problem, telescope, item, bought: true))
            .All(view => !view.IsUsable || (view.Drawbacks & ~known) == Drawbacks.None);
    }
}
