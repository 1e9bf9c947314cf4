using System.Collections.Immutable;
using Evenstep.Planning.Budgets;

namespace Evenstep.Planning.Purchases;

/// <summary>Why a catalogue item is no candidate, in the order in which the reasons are looked for.</summary>
public enum Excluded
{
    /// <summary>The request names it, or avoids its kind and does not demand it.</summary>
    ByRequest,
    OutOfStock,

    /// <summary>A reticle eyepiece where none is asked for, or the owned kit has one that serves.</summary>
    Reticle,

    /// <summary>Dearer than the budget or than the most allowed for one item.</summary>
    OverBudget,

    /// <summary>Its mass is known and above the most allowed.</summary>
    TooHeavy,

    /// <summary>It fits no telescope of the request.</summary>
    BarrelTooWide,

    /// <summary>Alone it gives no power near the range, in any telescope; a reticle eyepiece: it cannot reach the power asked.</summary>
    OutsidePowerRange,
    EyeReliefTooShort,
    ApparentFieldTooNarrow,

    /// <summary>It is owned already, or bought alone it repeats more owned powers than allowed.</summary>
    OverlapsOwned,
}

/// <summary>A catalogue item that is no candidate, and the first reason that applies.</summary>
public sealed record Exclusion(Item Item, Excluded Reason);

/// <summary>Which catalogue items may be bought at all, in ordinal order of ids, and why each other one may not.</summary>
public sealed record Candidacy(ImmutableArray<Item> Candidates, ImmutableArray<Exclusion> Exclusions)
{
    /// <summary>Of judging an item alone.</summary>
    private const long StepsOfItem = 150;

    /// <summary>The rules that can keep an item out by itself, a file each under Rules: the first that does gives the reason.</summary>
    private static readonly (Func<ItemAlone, bool> Excludes, Excluded Reason)[] Rules =
    [
        (RequestRule.Excludes, Excluded.ByRequest),
        (StockRule.Excludes, Excluded.OutOfStock),
        (ReticleRule.Excludes, Excluded.Reticle),
        (BudgetRule.Excludes, Excluded.OverBudget),
        (ItemPriceRule.Excludes, Excluded.OverBudget),
        (MassRule.Excludes, Excluded.TooHeavy),
        (BarrelRule.Excludes, Excluded.BarrelTooWide),
        (PowerRangeRule.Excludes, Excluded.OutsidePowerRange),
        (EyeReliefRule.Excludes, Excluded.EyeReliefTooShort),
        (ApparentFieldRule.Excludes, Excluded.ApparentFieldTooNarrow),
        (OwnedRule.Excludes, Excluded.OverlapsOwned),
        (OverlapRule.Excludes, Excluded.OverlapsOwned),
    ];

    /// <summary>The telescopes that decide, by their indices: those in which owned items and the candidates together can make a
    /// usable view; all, if there is none.</summary>
    public required ImmutableArray<int> Telescopes { get; init; }

    public static Candidacy Of(PurchaseProblem problem) => Of(problem, problem.Catalogue.Items);

    /// <summary>The same, of some items of the catalogue only.</summary>
    public static Candidacy Of(PurchaseProblem problem, ImmutableArray<Item> items) => Of(problem, items, steps: null);

    /// <summary>The same, of all items, counted as work.</summary>
    /// <exception cref="WorkEndedException">Nothing is left of the budget.</exception>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    internal static Candidacy Of(PurchaseProblem problem, WorkBudget budget) => Of(problem, problem.Catalogue.Items, new StepCounter(budget));

    /// <summary>The exclusion of an item, or null for a candidate.</summary>
    public Exclusion? ExclusionOf(Item item) => Exclusions.FirstOrDefault(exclusion => exclusion.Item.Equals(item));

    private static Candidacy Of(PurchaseProblem problem, ImmutableArray<Item> items, StepCounter? steps)
    {
        var owned = new OwnedKit(problem, steps);
        var candidates = ImmutableArray.CreateBuilder<Item>();
        var exclusions = ImmutableArray.CreateBuilder<Exclusion>();
        foreach (var item in items)
        {
            steps?.Count(StepsOfItem);
            if (ReasonAgainst(new ItemAlone(item, owned)) is { } reason)
            {
                exclusions.Add(new Exclusion(item, reason));
            }
            else
            {
                candidates.Add(item);
            }
        }

        var kept = candidates.ToImmutable();
        var telescopes = ServedTelescopes.Of(problem, kept, steps);
        steps?.Settle();
        return new Candidacy(kept, exclusions.ToImmutable()) { Telescopes = telescopes };
    }

    private static Excluded? ReasonAgainst(ItemAlone alone)
    {
        foreach (var (excludes, reason) in Rules)
        {
            if (excludes(alone))
            {
                return reason;
            }
        }

        return null;
    }
}
