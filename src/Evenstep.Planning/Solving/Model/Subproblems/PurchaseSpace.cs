using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model.Subproblems;

/// <summary>A purchase problem reduced to what must be decided: choices, and the views that they make.</summary>
internal sealed class PurchaseSpace
{
    private const long StepsPerCandidate = 1000;

    private readonly Sights?[] through;
    private Sights? alone;

    private PurchaseSpace(PurchaseProblem problem, ImmutableArray<int> telescopes, ImmutableArray<Choice> choices, WorkBudget budget)
    {
        Problem = problem;
        Telescopes = telescopes;
        Choices = choices;
        Budget = budget;
        through = new Sights?[choices.Length];
    }

    public PurchaseProblem Problem { get; }

    /// <summary>The telescopes that count, by their indices.</summary>
    public ImmutableArray<int> Telescopes { get; }

    public ImmutableArray<Choice> Choices { get; }

    public WorkBudget Budget { get; }

    public static PurchaseSpace Of(PurchaseProblem problem, Candidacy candidacy, WorkBudget budget)
    {
        var candidates = candidacy.Candidates;
        budget.Spend(StepsPerCandidate * candidates.Length);
        var nothing = problem.Limits.MaxPurchases == 0 && problem.Demands.MustInclude.IsEmpty;
        return new PurchaseSpace(problem, candidacy.Telescopes, nothing ? [] : Reduction.Of(problem, candidates), budget);
    }

    /// <summary>The views alone and through owned Barlows; null if there is no memory for them.</summary>
    public Sights? Alone() => alone ??= Sights.Of(Problem, Choices, barlow: null, Budget);

    /// <summary>The views through one Barlow that is for sale; null if there is no memory for them.</summary>
    public Sights? Through(Choice barlow) =>
        through[barlow.Index] ??= Sights.Of(Problem, Choices, barlow.Representative, Budget);

    /// <summary>Of every view, in one telescope or in any; null if there is no memory for them.</summary>
    public HashSet<double>? TrueFieldsDeg(int? telescope)
    {
        HashSet<double> fields = [];
        foreach (var sights in Choices.Where(choice => choice.Representative.IsBarlow).Select(Through).Prepend(Alone()))
        {
            if (sights is null)
            {
                return null;
            }

            for (var t = telescope ?? 0; t <= (telescope ?? (Problem.Telescopes.Length - 1)); t++)
            {
                sights.AddTrueFields(t, fields);
            }
        }

        return fields;
    }
}
