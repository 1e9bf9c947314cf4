using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Agreement;

/// <summary>Claims that are false by a little, made of a plan that is right.</summary>
internal static class FalseClaims
{
    private const decimal Cent = 0.01m;

    /// <summary>Preference scores are told apart by a ten millionth.</summary>
    private const double LeastOfPreference = 1e-6;

    private static readonly double[] Amounts = [1e-4, 1e-6, 1e-8];

    public static IEnumerable<(string Claim, PurchaseProblem Problem, Plan Plan)> Of(PurchaseProblem problem, Plan plan)
    {
        yield return ("nothing is allowed", problem, plan with { Outcome = Outcome.Infeasible, Purchases = [], Values = null });
        foreach (var amount in Amounts)
        {
            var values = plan.Values!;
            yield return ($"excess {amount}", problem, plan with { Values = values with { LeastMeanExcess = values.LeastMeanExcess + amount } });
            if (values.GreatestQuality is { } quality)
            {
                yield return ($"quality {amount}", problem, plan with { Values = values with { GreatestQuality = quality - amount } });
            }

            if (values.LeastLargestStep.Ln > problem.EnoughStep.Ln)
            {
                yield return ($"step {amount}", problem, plan with { Values = values with { LeastLargestStep = new(values.LeastLargestStep.Ln + amount) } });
            }
        }

        foreach (var item in plan.Purchases.Where(item => !problem.Demands.MustInclude.Contains(item.Id)))
        {
            foreach (var (claim, twin) in Twins(problem, item))
            {
                yield return (claim, problem with { Catalogue = [.. problem.Catalogue, twin] }, plan);
            }
        }
    }

    /// <summary>Items that should have been bought instead.</summary>
    private static IEnumerable<(string Claim, Item Twin)> Twins(PurchaseProblem problem, Item item)
    {
        if (item.Price >= Cent)
        {
            yield return ("a twin a cent cheaper", Twin(item, item.Price - Cent, item.MassGrams, item.Optic));
        }

        foreach (var amount in Amounts.Where(amount => amount >= LeastOfPreference))
        {
            if (problem.Preferences.Prefer == Prefer.LightWeight && item.MassGrams is { } mass)
            {
                yield return ($"a twin lighter by {amount}", Twin(item, item.Price, mass - amount, item.Optic));
            }
        }
    }

    private static Item Twin(Item item, decimal price, double? massGrams, Optic optic) =>
        new(item.Id + "-twin", optic) { Price = price, MassGrams = massGrams, ParfocalGroup = item.ParfocalGroup };
}
