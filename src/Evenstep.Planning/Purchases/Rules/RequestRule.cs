namespace Evenstep.Planning.Purchases;

/// <summary>Nothing is bought that the request excludes by its id, nor of a kind that it avoids, unless that item must be included.</summary>
internal static class RequestRule
{
    public static bool Excludes(ItemAlone alone) => !Allows(alone.Problem, alone.Item);

    public static bool Allows(PurchaseProblem problem, Item item)
    {
        var preferences = problem.Preferences;
        var avoided = (preferences.AvoidBarlows && item.IsBarlow) || (preferences.AvoidZooms && item.IsZoom);
        return (preferences.Exclude.IsEmpty || !preferences.Exclude.Contains(item.Id))
            && (!avoided || problem.Demands.MustInclude.Contains(item.Id));
    }
}
