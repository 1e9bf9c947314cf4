using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Cuts;
using Evenstep.Planning.Solving.Model.Subproblems;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model;

/// <summary>
/// Answers a question with the Barlows settled. A master without steps, excess, quality and overlaps is solved; the set found is
/// judged exactly; what it breaks becomes cuts, which every set within the question meets; and so on, until no set is
/// left, or one found breaks nothing.
/// </summary>
internal sealed class CutLoop(Settled settled, RecentSets recent)
{
    /// <summary>Memory of one number in a model, of one choice and of a solver, in bytes.</summary>
    private const long BytesPerTerm = 100;
    private const long BytesPerChoice = 2000;
    private const long BytesOfSolver = 4_000_000;

    private const long TermsOfClash = 5;

    /// <summary>Steps of work to state the rules for one choice.</summary>
    private const long StepsPerChoice = 500;

    private readonly WorkBudget budget = settled.Space.Budget;
    private readonly HashSet<(int, int)> clashesSeen = [];
    private readonly List<Cut> cuts = [];
    private readonly List<Clash> counted = [];
    private long terms;
    private long held;

    private Question Question => settled.Question;

    public Answer Run()
    {
        try
        {
            return settled.IsFutile || IsRefutedUnbuilt() ? Answer.None
                : budget.IsSpent || !TryHold(BytesOfSolver + (BytesPerChoice * settled.Choices.Length)) ? Answer.Undecided
                : Search();
        }
        finally
        {
            budget.Release(held);
        }
    }

    /// <summary>What sets found before, and nothing at all, tell about this one.</summary>
    private bool IsRefutedUnbuilt()
    {
        foreach (var indices in recent.In(settled).Prepend([]))
        {
            var judged = Judged.Of(settled, indices);
            if (budget.IsSpent)
            {
                return false;
            }

            if (AddStepClauses(judged) || AddGainCuts(judged))
            {
                return true;
            }

            AddClashes(judged);
        }

        return false;
    }

    private Answer Search()
    {
        budget.Spend(StepsPerChoice * settled.Choices.Length);
        var master = new Master(settled, AllowedSet.Rules);
        var (cutsKept, clashesKept) = (0, 0);
        while (true)
        {
            for (; cutsKept < cuts.Count; cutsKept++)
            {
                cuts[cutsKept].Keep(master);
                terms += cuts[cutsKept].Terms;
            }

            for (; clashesKept < counted.Count; clashesKept++)
            {
                Rules.OverlapCount.Count(master, counted[clashesKept]);
                terms += TermsOfClash;
            }

            if (!TryHold((terms * BytesPerTerm) + BytesOfSolver + (BytesPerChoice * settled.Choices.Length) - held))
            {
                return Answer.Undecided;
            }

            var solver = new CpSolver();
            var status = Work.Run(solver, master.Cp, terms + (3 * settled.Choices.Length), budget);
            if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
            {
                return status == CpSolverStatus.Infeasible ? Answer.None : Answer.Undecided;
            }

            var indices = master.Indices(solver);
            if (BreaksNothing(indices) is not { } isWithin)
            {
                return Answer.Undecided;
            }

            if (isWithin)
            {
                var purchases = master.Purchases(solver);
                return IsConfirmed(Kit.Of(settled.Problem, purchases)) ? new Answer(purchases, status == CpSolverStatus.Optimal) : Answer.Undecided;
            }
        }
    }

    /// <summary>Null if a set is so near to a limit that no cut tells it apart.</summary>
    private bool? BreaksNothing(int[] indices)
    {
        var judged = Judged.Of(settled, indices);
        var (cutsBefore, clashesBefore) = (cuts.Count, counted.Count);
        AddStepClauses(judged);
        AddGainCuts(judged);
        AddClashes(judged);
        recent.Add(judged);
        if (cuts.Count == cutsBefore && counted.Count == clashesBefore)
        {
            return judged is { KeepsStep: true, KeepsExcess: true, KeepsQuality: true } && Overlapping(judged) <= settled.AllowedOverlaps ? true : null;
        }

        return counted.Count > clashesBefore || cuts[cutsBefore..].Exists(cut => !cut.Allows(indices)) ? false : null;
    }

    /// <summary>Whether nothing can meet one of them.</summary>
    private bool AddStepClauses(Judged judged)
    {
        if (judged.KeepsStep)
        {
            return false;
        }

        foreach (var clause in StepClauses.Of(judged))
        {
            cuts.Add(clause);
            if (clause.IsOutOfReach)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether nothing can meet one of them.</summary>
    private bool AddGainCuts(Judged judged) =>
        (!judged.KeepsExcess && Add(GainCut.OfExcess(judged))) || (!judged.KeepsQuality && Add(GainCut.OfQuality(judged)));

    /// <summary>Whether nothing can meet it.</summary>
    private bool Add(GainCut cut)
    {
        cuts.Add(cut);
        return cut.IsOutOfReach(settled);
    }

    private void AddClashes(Judged judged)
    {
        if (settled.AllowedOverlaps > 0 && Overlapping(judged) <= settled.AllowedOverlaps)
        {
            return;
        }

        foreach (var clash in judged.Clashes().Where(clash => clashesSeen.Add((clash.One, clash.Other))))
        {
            if (settled.AllowedOverlaps == 0)
            {
                cuts.Add(OverlapCuts.Of(settled, clash));
            }
            else
            {
                counted.Add(clash);
            }
        }
    }

    private int Overlapping(Judged judged) =>
        settled.OverlapsOfNothing + judged.Indices.Sum(settled.OverlapsOf) + judged.Clashes().Sum(clash => clash.Pairs);

    /// <summary>The whole kit, judged once more by the definitions alone.</summary>
    private bool IsConfirmed(Kit kit)
    {
        var figures = kit.FiguresIn(settled.Space.Telescopes);
        return figures.LargestStep.AtMost(Question.MostStep)
            && Tolerance.AtMost(figures.MeanExcess, Question.MostExcess)
            && (Question.QualityMeasure is not { } measure || Tolerance.AtLeast(measure.Of(kit), Question.LeastQuality))
            && kit.OverlapsThroughPurchases() <= settled.AllowedOverlaps
            && Question.Framings.All(framing => FramingRule.Frames(kit, framing.WidthDeg, framing.TelescopeIndex))
            && !Breaches.Of(kit).Any(breach => breach is not Breach.Overlaps);
    }

    private bool TryHold(long bytes)
    {
        if (!budget.TryHold(bytes))
        {
            return false;
        }

        held += bytes;
        return true;
    }
}
