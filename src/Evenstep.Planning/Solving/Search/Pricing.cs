using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>Works out costs.</summary>
internal sealed class Pricing(PurchaseProblem problem)
{
    private readonly PreferenceScore score = new(problem);

    /// <summary>Parfocal groups are a matter of the whole set; all other preferences add up.</summary>
    public bool CountsParfocalGroups { get; } = problem.Preferences.Prefer == Prefer.Parfocal;

    /// <summary>What an item adds; the preference for parfocal groups is left to <see cref="Of(IReadOnlyCollection{Item})"/>.</summary>
    public Cost Of(Item item) =>
        new(score.UnitsOfItem(item), item.ExactPrice, 1, Ties.Fingerprint(item));

    /// <summary>What a whole set costs.</summary>
    public Cost Of(IReadOnlyCollection<Item> purchases)
    {
        var sum = purchases.Select(Of).Aggregate(default(Cost), (a, b) => a + b);
        return CountsParfocalGroups ? sum with { Preference = (long)score.Of(purchases) } : sum;
    }

    /// <summary>Whether the first of two alike wares can always stand in for the second.</summary>
    public bool IsNeverWorse(Ware a, Ware b) =>
        a.Cost.Price <= b.Cost.Price && a.Cost.Preference <= b.Cost.Preference && KeepsParfocal(a.Item, b.Item);

    private bool KeepsParfocal(Item a, Item b) =>
        !CountsParfocalGroups || a.IsBarlow || b.ParfocalGroup is null || a.ParfocalGroup == b.ParfocalGroup;
}
