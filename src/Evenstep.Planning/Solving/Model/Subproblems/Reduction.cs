using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model.Subproblems;

/// <summary>
/// Items of which at most one is bought: alike in every view they can make and every demand they can meet, so that only
/// price and preference tell them apart.
/// </summary>
/// <param name="Index">Its index among the choices of a problem.</param>
/// <param name="Items">At least one; none of them is beaten by another at once in price and preference.</param>
/// <param name="IsDemanded">It must be bought; it has one item then.</param>
internal sealed record Choice(int Index, ImmutableArray<Item> Items, bool IsDemanded)
{
    /// <summary>Stands for all of them wherever optics matter.</summary>
    public Item Representative => Items[0];

    /// <summary>The price of the cheapest of them.</summary>
    public Money LeastPrice { get; } = Items.Min(item => item.ExactPrice);

    /// <summary>The cheapest of them; of equals the first by the fixed rule.</summary>
    public Item Cheapest { get; } = Items.OrderBy(item => item.ExactPrice).ThenBy(Ties.Fingerprint).ThenBy(item => item.Id, StringComparer.Ordinal).First();
}

/// <summary>
/// Leaves out candidates that are in no best set.
/// <para>
/// Why that is harmless: take two alike items, A and B. Whatever set holds both, the set without B has the same views and
/// meets the same demands (unless B is demanded itself), has no overlap more, costs no more, scores no worse in any
/// preference and has fewer items: so no best set holds both, unless both are demanded. And wherever B stands, A could
/// stand instead; if A costs no more and is preferred no less, the set does not get worse by it, and the fixed order of
/// ties settles the case where both are equal. Nothing else is left out.
/// </para>
/// </summary>
internal static class Reduction
{
    /// <summary>The choices, in a fixed order that does not depend on how the catalogue was listed.</summary>
    public static ImmutableArray<Choice> Of(PurchaseProblem problem, ImmutableArray<Item> candidates)
    {
        var score = new PreferenceScore(problem);
        var demanded = problem.Demands.MustInclude.ToHashSet();
        var choices = ImmutableArray.CreateBuilder<Choice>();
        foreach (var alike in candidates.GroupBy(item => Likeness.Of(problem, item)))
        {
            Item[] musts = [.. alike.Where(item => demanded.Contains(item.Id))];
            foreach (var must in musts)
            {
                choices.Add(new Choice(choices.Count, [must], IsDemanded: true));
            }

            if (musts.Length == 0)
            {
                choices.Add(new Choice(choices.Count, Unbeaten([.. alike], problem, score), IsDemanded: false));
            }
        }

        return choices.ToImmutable();
    }

    private static ImmutableArray<Item> Unbeaten(Item[] alike, PurchaseProblem problem, PreferenceScore score) =>
        [.. alike.Where(item => !alike.Any(other => Beats(other, item, problem, score)))];

    private static bool Beats(Item a, Item b, PurchaseProblem problem, PreferenceScore score)
    {
        var (preferenceA, preferenceB) = (score.OfItem(a), score.OfItem(b));
        if (ReferenceEquals(a, b) || a.ExactPrice > b.ExactPrice || preferenceA > preferenceB || !KeepsParfocal(a, b, problem))
        {
            return false;
        }

        return a.ExactPrice < b.ExactPrice || preferenceA < preferenceB || Ties.IsFirst(a, b);
    }

    /// <summary>Whether A in place of B never makes more parfocal groups.</summary>
    private static bool KeepsParfocal(Item a, Item b, PurchaseProblem problem) =>
        problem.Preferences.Prefer != Prefer.Parfocal || a.IsBarlow || b.ParfocalGroup is null || a.ParfocalGroup == b.ParfocalGroup;
}
