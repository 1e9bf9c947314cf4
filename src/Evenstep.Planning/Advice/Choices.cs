using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>A way of weighing the same wishes.</summary>
public enum ChoiceCode
{
    /// <summary>Preferring a low price.</summary>
    LeastMoney,

    /// <summary>Preferring comfort.</summary>
    Comfort,

    /// <summary>Preferring comfort, and without a Barlow.</summary>
    NoBarlow,

    /// <summary>Preferring wide fields.</summary>
    WidestViews,
}

/// <summary>What one or several ways of weighing come to.</summary>
/// <param name="Codes">The ways that choose these purchases.</param>
/// <param name="Problem">As the first of them weighs it.</param>
/// <param name="Plan">Its plan.</param>
/// <param name="Kit">With the purchases.</param>
/// <param name="Differences">What there is more and less of than with <see cref="ChoiceCode.Comfort"/>; nothing of that itself.</param>
public sealed record Choice(ImmutableArray<ChoiceCode> Codes, PurchaseProblem Problem, Plan Plan, Kit Kit, ImmutableArray<Remark> Differences);

/// <summary>A way of weighing for which no set is allowed, though one is for comfort.</summary>
/// <param name="Code">The way.</param>
/// <param name="Barlows">Those that must be among the purchases, where that is why; else empty.</param>
public sealed record InfeasibleChoice(ChoiceCode Code, ImmutableArray<Item> Barlows);

/// <summary>Several ways of weighing the same wishes, side by side.</summary>
/// <param name="All">The cheapest first; ways that choose the same purchases are one. Empty if nothing is allowed.</param>
/// <param name="Comfort">The plan that the others are compared with; it says why, if nothing is allowed.</param>
/// <param name="NotFound">The ways for which the work ended before any allowed set was found.</param>
public sealed record Choices(ImmutableArray<Choice> All, Plan Comfort, ImmutableArray<ChoiceCode> NotFound)
{
    /// <summary>The ways for which no set is allowed; empty if nothing is allowed for comfort either.</summary>
    public ImmutableArray<InfeasibleChoice> Infeasible { get; init; } = [];

    private static readonly ImmutableArray<ChoiceCode> Codes = [ChoiceCode.Comfort, ChoiceCode.LeastMoney, ChoiceCode.NoBarlow, ChoiceCode.WidestViews];

    /// <summary>Whether every choice is proved to be the best of its way.</summary>
    public bool AreProved => NotFound.IsEmpty && Comfort.IsProved && All.All(choice => choice.Plan.IsProved);

    /// <param name="problem">Its preference stands aside.</param>
    /// <param name="solve">Plans each way of weighing.</param>
    /// <param name="budget">The work and memory that all of them together may take, shared in equal parts.</param>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    /// <exception cref="WorkLimitException">The budget ended before any allowed set was found for comfort.</exception>
    public static Choices Of(PurchaseProblem problem, SolveWithin solve, WorkBudget budget)
    {
        var comfort = SolvedOf(0);
        if (comfort.Plan.Outcome == Outcome.Infeasible)
        {
            return new Choices([], comfort.Plan, []);
        }

        List<Weighed> weighed = [comfort];
        List<ChoiceCode> notFound = [];
        for (var i = 1; i < Codes.Length; i++)
        {
            try
            {
                weighed.Add(SolvedOf(i));
            }
            catch (WorkLimitException)
            {
                notFound.Add(Codes[i]);
            }
        }

        var kit = Kit.Of(problem, comfort.Plan.Purchases);
        return new Choices(
        [
            .. weighed.Where(one => !one.IsInfeasible)
                .GroupBy(one => string.Join('\0', one.Plan.Purchases.Select(item => item.Id)))
                .Select(group => ChoiceOf([.. group], kit, comfort.Plan.Candidacy.Telescopes))
                .OrderBy(choice => choice.Kit.TotalPrice).ThenBy(choice => choice.Codes[0]),
        ],
        comfort.Plan,
        [.. notFound])
        {
            Infeasible = [.. weighed.Where(one => one.IsInfeasible).Select(one => new InfeasibleChoice(one.Code, one.BarlowsInTheWay))],
        };

        Weighed SolvedOf(int i)
        {
            var weighing = Weighing(problem, Codes[i]);
            return new Weighed(Codes[i], weighing, solve(weighing, budget.Part(budget.UnitsLeft / (Codes.Length - i))));
        }
    }

    /// <summary>The problem as one way weighs it.</summary>
    public static PurchaseProblem Weighing(PurchaseProblem problem, ChoiceCode code) => problem with
    {
        Preferences = problem.Preferences with
        {
            Prefer = code switch
            {
                ChoiceCode.LeastMoney => Prefer.LowPrice,
                ChoiceCode.WidestViews => Prefer.WideField,
                _ => Prefer.Comfort,
            },
            AvoidBarlows = problem.Preferences.AvoidBarlows || code == ChoiceCode.NoBarlow,
        },
    };

    private static Choice ChoiceOf(ImmutableArray<Weighed> agreeing, Kit comfort, ImmutableArray<int> telescopes)
    {
        var first = agreeing[0];
        var kit = Kit.Of(first.Problem, first.Plan.Purchases);
        ImmutableArray<ChoiceCode> codes = [.. agreeing.Select(one => one.Code).Order()];
        return new Choice(codes, first.Problem, first.Plan, kit, codes.Contains(ChoiceCode.Comfort) ? [] : Differences.Of(kit, comfort, telescopes));
    }

    private sealed record Weighed(ChoiceCode Code, PurchaseProblem Problem, Plan Plan)
    {
        /// <summary>What must be included is bought even where it is to be avoided, so that a Barlow is none of choice here.</summary>
        public ImmutableArray<Item> BarlowsInTheWay => Code == ChoiceCode.NoBarlow ? [.. Plan.Purchases.Where(item => item.Optic is Barlow)] : [];

        public bool IsInfeasible => Plan.Outcome == Outcome.Infeasible || !BarlowsInTheWay.IsEmpty;
    }
}
