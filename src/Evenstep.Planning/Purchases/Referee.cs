using System.Collections.Immutable;
using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>
/// Checks a plan against the problem in plain code, knowing nothing of how it was found: every rule of an allowed set,
/// every value claimed, and that no purchase could simply be left out. It cannot see that nothing better exists (that is
/// the solver's proof), but it sees everything else.
/// </summary>
public static class Referee
{
    /// <summary>How far a claimed value may be from the one worked out here.</summary>
    private const double ClaimTolerance = 1e-6;

    /// <summary>One sentence for each thing wrong with the plan; empty for a good one.</summary>
    public static ImmutableArray<string> FaultsOf(PurchaseProblem problem, Plan plan)
    {
        if (plan.Outcome == Outcome.Infeasible)
        {
            return plan is { Conflicts: not null, Purchases.IsEmpty: true, Values: null }
                ? [] : ["An infeasible plan names its conflicts and buys nothing."];
        }

        var kit = Kit.Of(problem, plan.Purchases);
        var measure = plan.Values is { GreatestQuality: not null } values
            ? QualityMeasure.Of(problem, plan.Candidacy.Telescopes, values.LargestStepAllowed)
            : null;
        return
        [
            .. Breaches.Of(kit).Select(breach => breach.ToString()),
            .. NoCandidates(problem, plan),
            .. WrongOutcome(plan),
            .. WrongWish(plan, kit),
            .. WrongValues(problem, plan, kit, measure),
            .. Superfluous(problem, plan, measure),
        ];
    }

    private static IEnumerable<string> NoCandidates(PurchaseProblem problem, Plan plan) =>
        plan.Purchases.Where(item => !problem.Catalogue.Contains(item)).Select(item => $"{item} is not for sale.")
            .Concat(Candidacy.Of(problem, plan.Purchases).Exclusions.Select(exclusion => $"{exclusion.Item} is no candidate: {exclusion.Reason}."));

    private static IEnumerable<string> WrongOutcome(Plan plan)
    {
        if (plan.Values is null || plan.Conflicts is not null)
        {
            yield return "A plan has values and no conflicts.";
        }

        if (plan.Outcome is Outcome.Optimal or Outcome.NothingWorthwhile && plan.Purchases.IsEmpty != (plan.Outcome == Outcome.NothingWorthwhile))
        {
            yield return $"The outcome {plan.Outcome} does not go with {plan.Purchases.Length} purchases.";
        }
    }

    private static IEnumerable<string> WrongWish(Plan plan, Kit kit)
    {
        if (plan.Wish is { Granted: true } wish && !FramingRule.Frames(kit, wish.TrueFieldDeg, null))
        {
            yield return $"The kit has no view of {wish.TrueFieldDeg} degrees, though the wish for one is said to be granted.";
        }
    }

    private static IEnumerable<string> WrongValues(PurchaseProblem problem, Plan plan, Kit kit, QualityMeasure? measure)
    {
        if (plan.Values is not { } values)
        {
            yield break;
        }

        var figures = kit.FiguresIn(plan.Candidacy.Telescopes);
        var step = Step.Max(problem.EnoughStep, figures.LargestStep);
        if (step.Above(values.LargestStepAllowed))
        {
            yield return $"The largest step, {step}, is above the {values.LargestStepAllowed} allowed.";
        }

        if (values.Bound.Above(values.LeastLargestStep) || (plan.IsProved && values.Bound.Below(values.LeastLargestStep)))
        {
            yield return $"The bound {values.Bound} does not go with the least largest step {values.LeastLargestStep}.";
        }

        if (step.Ln < values.Bound.Ln - ClaimTolerance)
        {
            yield return $"The largest step, {step}, is better than the bound {values.Bound} proved.";
        }

        if (figures.MeanExcess > values.MeanExcessAllowed + Tolerance.Value)
        {
            yield return $"The mean excess, {figures.MeanExcess}, is above the {values.MeanExcessAllowed} allowed.";
        }

        if (plan.IsProved && figures.MeanExcess < values.LeastMeanExcess - ClaimTolerance)
        {
            yield return $"The mean excess, {figures.MeanExcess}, is better than the least, {values.LeastMeanExcess}.";
        }

        if (plan.IsProved && (values.GreatestQuality is null) != (problem.Preferences.Prefer == Prefer.LowPrice))
        {
            yield return "A quality is claimed unless only the price is preferred.";
        }

        if (values is { GreatestQuality: { } greatest, QualityRequired: { } required })
        {
            var quality = measure!.Of(kit);
            if (quality < required - Tolerance.Value)
            {
                yield return $"The quality, {quality}, is below the {required} required.";
            }

            if (plan.IsProved && quality > greatest + ClaimTolerance)
            {
                yield return $"The quality, {quality}, is better than the greatest, {greatest}.";
            }
        }

        var preference = new PreferenceScore(problem).Of(plan.Purchases);
        if (Math.Abs(preference - values.Preference) > ClaimTolerance)
        {
            yield return $"The preference score is {preference}, not {values.Preference}.";
        }
    }

    /// <summary>A purchase is superfluous if the set without it is allowed and as good in every stage.</summary>
    private static IEnumerable<string> Superfluous(PurchaseProblem problem, Plan plan, QualityMeasure? measure)
    {
        if (!plan.IsProved || plan.Values is not { } values)
        {
            yield break;
        }

        foreach (var item in plan.Purchases)
        {
            var without = Kit.Of(problem, plan.Purchases.Remove(item));
            var figures = without.FiguresIn(plan.Candidacy.Telescopes);
            var asGood = figures.LargestStep.Ln <= values.LargestStepAllowed.Ln
                && figures.MeanExcess <= values.MeanExcessAllowed
                && !(measure?.Of(without) < values.QualityRequired)
                && !Breaches.Of(without).Any()
                && (plan.Wish is not { Granted: true } wish || FramingRule.Frames(without, wish.TrueFieldDeg, null));
            if (asGood)
            {
                yield return $"{item} could be left out.";
            }
        }
    }
}
