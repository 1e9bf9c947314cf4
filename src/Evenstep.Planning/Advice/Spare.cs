using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>Which owned items a kit does not need: without them it is as good, in the sense of <see cref="SpareTest"/>.</summary>
public static class Spare
{
    /// <summary>The owned items that the kit is as good without, one at a time. In ordinal order of ids.</summary>
    /// <param name="kit">What there is.</param>
    /// <param name="telescopes">The telescopes that count, by their indices: see <see cref="Candidacy.Telescopes"/>.</param>
    /// <param name="budget">Counts the work, which it does not cut short; null for nobody who could cancel.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static ImmutableArray<Item> Of(Kit kit, ImmutableArray<int> telescopes, WorkBudget? budget = null)
    {
        var test = new SpareTest(kit, telescopes, budget);
        return [.. kit.Problem.Owned.Where((_, index) => test.IsAsGoodWithout(index))];
    }

    /// <summary>The same of a kit that nothing is bought for: the telescopes that show something count, or all, if none does.</summary>
    public static ImmutableArray<Item> Of(Kit kit, WorkBudget? budget = null) => Of(kit, ShowingTelescopes(kit), budget);

    /// <summary>
    /// The largest set of owned items that the kit is as good without, all at once. Of several the one whose known prices add up
    /// to most; then the first in ordinal order of the ids listed. In ordinal order of ids; null if the work limit came first.
    /// </summary>
    /// <param name="kit">What there is.</param>
    /// <param name="telescopes">The telescopes that count, by their indices: see <see cref="Candidacy.Telescopes"/>.</param>
    /// <param name="budget">What it may take.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static ImmutableArray<Item>? Together(Kit kit, ImmutableArray<int> telescopes, WorkBudget budget) =>
        new SpareSearch(kit, new SpareTest(kit, telescopes, budget), budget).Run();

    /// <summary>The same of a kit that nothing is bought for.</summary>
    public static ImmutableArray<Item>? Together(Kit kit, WorkBudget budget) => Together(kit, ShowingTelescopes(kit), budget);

    /// <summary>The telescopes, by their indices, that a kit shows something in; all, if there is none.</summary>
    public static ImmutableArray<int> ShowingTelescopes(Kit kit)
    {
        ImmutableArray<int> all = [.. Enumerable.Range(0, kit.Ladders.Length)];
        var showing = all.RemoveAll(t => kit.Ladders[t].Usable.IsEmpty);
        return showing.IsEmpty ? all : showing;
    }
}
