using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;

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
    public static Candidacy Of(PurchaseProblem problem) => Of(problem, problem.Catalogue.Items);

    /// <summary>The same, of some items of the catalogue only.</summary>
    public static Candidacy Of(PurchaseProblem problem, ImmutableArray<Item> items) => new Sieve(problem, budget: null).Sort(items);

    /// <summary>The same, of all items, counted as work.</summary>
    /// <exception cref="WorkEndedException">Nothing is left of the budget.</exception>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    internal static Candidacy Of(PurchaseProblem problem, WorkBudget budget) => new Sieve(problem, budget).Sort(problem.Catalogue.Items);

    /// <summary>The exclusion of an item, or null for a candidate.</summary>
    public Exclusion? ExclusionOf(Item item) => Exclusions.FirstOrDefault(exclusion => exclusion.Item.Equals(item));

    /// <summary>The questions asked of every item, in order, with what they share worked out once.</summary>
    private sealed class Sieve
    {
        /// <summary>Of judging an item alone, of working a view out, and of comparing two.</summary>
        private const long StepsOfItem = 150;
        private const long StepsOfView = 60;
        private const long StepsOfComparison = 2;

        private readonly PurchaseProblem problem;
        private readonly StepCounter? steps;
        private readonly Limits limits;
        private readonly Preferences preferences;
        private readonly double lnLeastStep;
        private readonly Lazy<Item[]> allBarlows;
        private readonly Item[] ownedBarlows;
        private readonly Item[] ownedOculars;
        private readonly Showing[][] ownedViews;
        private readonly List<Showing> added = [];
        private readonly bool ownedReticleServes;

        public Sieve(PurchaseProblem problem, WorkBudget? budget)
        {
            this.problem = problem;
            steps = budget is null ? null : new StepCounter(budget);
            (limits, preferences, lnLeastStep) = (problem.Limits, problem.Preferences, problem.Preferences.LnLeastStep);
            allBarlows = new(() => [.. problem.Owned.Concat(problem.Catalogue).Where(item => item.IsBarlow).Distinct()]);
            ownedBarlows = [.. problem.Owned.Where(item => item.IsBarlow)];
            ownedOculars = [.. problem.Owned.Where(item => item.Ocular is not null)];
            steps?.Count(StepsOfView * ownedOculars.Length * (1 + ownedBarlows.Length) * problem.Telescopes.Length);
            var ownedKit = Kit.Of(problem, []);
            ownedViews = [.. ownedKit.Ladders.Select(ladder => ladder.Usable.Select(view => view.Showing).ToArray())];
            ownedReticleServes = problem.Demands.ReticleLeastPower is { } asked
                && ReticleRule.Serves(ownedKit, asked);
        }

        public Candidacy Sort(ImmutableArray<Item> items)
        {
            var candidates = ImmutableArray.CreateBuilder<Item>();
            var exclusions = ImmutableArray.CreateBuilder<Exclusion>();
            foreach (var item in items)
            {
                steps?.Count(StepsOfItem);
                if (ReasonAgainst(item) is { } reason)
                {
                    exclusions.Add(new Exclusion(item, reason));
                }
                else
                {
                    candidates.Add(item);
                }
            }

            steps?.Settle();
            return new Candidacy(candidates.ToImmutable(), exclusions.ToImmutable());
        }

        private Excluded? ReasonAgainst(Item item) =>
            IsExcludedByRequest(item) ? Excluded.ByRequest
            : !item.InStock ? Excluded.OutOfStock
            : item.IsReticle && (problem.Demands.ReticleLeastPower is null || ownedReticleServes) ? Excluded.Reticle
            : IsOverBudget(item) ? Excluded.OverBudget
            : item.MassGrams > limits.MaxItemMassGrams ? Excluded.TooHeavy
            : !FitsSomeTelescope(item) ? Excluded.BarrelTooWide
            : ReasonAgainstViews(item) is { } reason ? reason
            : OverlapsOwned(item) ? Excluded.OverlapsOwned
            : null;

        private bool IsExcludedByRequest(Item item)
        {
            var avoided = (preferences.AvoidBarlows && item.IsBarlow) || (preferences.AvoidZooms && item.IsZoom);
            return (!preferences.Exclude.IsEmpty && preferences.Exclude.Contains(item.Id))
                || (avoided && !problem.Demands.MustInclude.Contains(item.Id));
        }

        private bool IsOverBudget(Item item) => !BudgetRule.Affords(problem, item.ExactPrice) || item.Price > limits.MaxPricePerItem;

        private bool IsOwned(Item item) => problem.Owned.Contains(item);

        private bool FitsSomeTelescope(Item item)
        {
            foreach (var telescope in problem.Telescopes)
            {
                if (item.Optic.Barrel.FitsInto(telescope.Telescope.FocuserBarrel))
                {
                    return true;
                }
            }

            return false;
        }

        /// <summary>How far the item's views alone come: the reason that stops the one that comes farthest.</summary>
        private Excluded? ReasonAgainstViews(Item item)
        {
            if (item.IsBarlow)
            {
                return null;
            }

            if (item.IsReticle)
            {
                return ReachesReticlePower(item) ? null : Excluded.OutsidePowerRange;
            }

            var farthest = NotUsable.BelowRange;
            foreach (var telescope in problem.Telescopes)
            {
                if (View.Of(telescope, item.Ocular!) is { } view)
                {
                    if (view.NotUsableBecause(problem.Observer, preferences.LeastApparentFieldDeg, !IsOwned(item)) is not { } because)
                    {
                        return null;
                    }

                    farthest = because > farthest ? because : farthest;
                }
            }

            return farthest switch
            {
                NotUsable.ApparentField => Excluded.ApparentFieldTooNarrow,
                NotUsable.EyeRelief => Excluded.EyeReliefTooShort,
                _ => Excluded.OutsidePowerRange,
            };
        }

        private bool ReachesReticlePower(Item item) =>
            ReticleRule.Serves(problem, item, allBarlows.Value, problem.Demands.ReticleLeastPower!.Value);

        private bool OverlapsOwned(Item item) => IsOwned(item) || OverlapRule.Left(problem, OverlapsBoughtAlone(item)) < 0;

        private int OverlapsBoughtAlone(Item item)
        {
            var count = 0;
            for (var t = 0; t < problem.Telescopes.Length && OverlapRule.Left(problem, count) >= 0; t++)
            {
                added.Clear();
                AddViews(problem.Telescopes[t], item);
                for (var i = 0; i < added.Count && OverlapRule.Left(problem, count) >= 0; i++)
                {
                    steps?.Count(StepsOfView + (StepsOfComparison * (ownedViews[t].Length + i)));
                    var before = CollectionsMarshal.AsSpan(added)[..i];
                    count += CountRepeats(added[i], ownedViews[t]) + CountRepeats(added[i], before);
                }
            }

            return count;
        }

        private int CountRepeats(in Showing view, ReadOnlySpan<Showing> others)
        {
            var count = 0;
            foreach (ref readonly var other in others)
            {
                count += Overlap.Between(view, other, lnLeastStep) ? 1 : 0;
            }

            return count;
        }

        /// <summary>Notes the usable views that the item would add to what is owned.</summary>
        private void AddViews(TelescopeInUse telescope, Item item)
        {
            if (item.IsBarlow)
            {
                foreach (var ocular in ownedOculars)
                {
                    KitViews.AddUsable(problem, telescope, ocular, ocularBought: false, item, added);
                }

                return;
            }

            KitViews.AddUsable(problem, telescope, item, ocularBought: true, barlow: null, added);
            foreach (var barlow in ownedBarlows)
            {
                KitViews.AddUsable(problem, telescope, item, ocularBought: true, barlow, added);
            }
        }
    }
}
