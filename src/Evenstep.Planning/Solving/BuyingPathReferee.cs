using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving;

/// <summary>
/// Checks a buying path against its problem in plain code: the rules that every beginning must keep, all rules at its end,
/// that the end survives the plan's first stage, and every price and loss. It cannot see that no better path exists.
/// </summary>
public static class BuyingPathReferee
{
    /// <summary>How far a claimed loss may be from the one worked out here.</summary>
    private const double ClaimTolerance = 1e-6;

    /// <summary>One sentence for each thing wrong with the path; empty for a good one.</summary>
    public static ImmutableArray<string> FaultsOf(BuyingPath path)
    {
        var problem = path.Frontier.Problem;
        Kit[] kits = [.. Enumerable.Range(0, path.Steps.Length + 1).Select(count => Kit.Of(problem, path.Steps.Take(count).Select(step => step.Item)))];
        return
        [
            .. Referee.FaultsOf(problem, path.Plan),
            .. SpendingReferee.FaultsOf(path.Frontier),
            .. kits.SkipLast(1).SelectMany(Breaches.Of).Where(breach => !IsDemand(breach)).Select(breach => breach.ToString()),
            .. path.Plan.Values is null ? path.Steps.Select(step => $"{step.Item} is bought, though no set is allowed.") : WrongEnd(path, kits[^1]),
            .. path.Steps.Zip(kits.Skip(1)).SelectMany(pair => WrongStep(path, pair.First, pair.Second)),
        ];
    }

    /// <summary>Demands need only be met at the end.</summary>
    private static bool IsDemand(Breach breach) => breach is Breach.MustInclude or Breach.MustFrame or Breach.Reticle;

    private static IEnumerable<string> WrongEnd(BuyingPath path, Kit kit)
    {
        foreach (var breach in Breaches.Of(kit))
        {
            yield return breach.ToString();
        }

        foreach (var exclusion in Candidacy.Of(kit.Problem, kit.Purchases).Exclusions)
        {
            yield return $"{exclusion.Item} is no candidate: {exclusion.Reason}.";
        }

        var largestStep = LargestStepOf(path, kit);
        if (largestStep.Above(path.Plan.Values!.LargestStepAllowed))
        {
            yield return $"The largest step, {largestStep}, is above the {path.Plan.Values.LargestStepAllowed} allowed.";
        }
    }

    private static IEnumerable<string> WrongStep(BuyingPath path, BuyingStep step, Kit kit)
    {
        if (kit.TotalPrice != step.TotalPriceSoFar)
        {
            yield return $"The price so far is {kit.TotalPrice}, not {step.TotalPriceSoFar}.";
        }

        var loss = path.Frontier.LeastStepFor(kit.TotalPrice) is { } least
            ? Math.Max(0, LargestStepOf(path, kit).Over(least) - 1)
            : 0;
        if (Math.Abs(loss - step.Loss) > ClaimTolerance)
        {
            yield return $"The loss with {step.Item} is {loss}, not {step.Loss}.";
        }
    }

    /// <summary>What is enough is as good as anything narrower.</summary>
    private static Step LargestStepOf(BuyingPath path, Kit kit) =>
        Step.Max(kit.Problem.EnoughStep, kit.FiguresIn(path.Plan.Candidacy.Telescopes).LargestStep);
}
