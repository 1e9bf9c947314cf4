using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks;

/// <summary>Claims that are false by a little, made of a plan that is right.</summary>
internal static class FalseClaims
{
    private const decimal Cent = 0.01m;

    private static readonly double[] Amounts = [1e-4, 1e-6, 1e-8];

    public static IEnumerable<(PurchaseProblem Problem, Plan Plan)> Of(PurchaseProblem problem, Plan plan)
    {
        var values = plan.Values!;
        foreach (var amount in Amounts)
        {
            yield return (problem, plan with { Values = values with { LeastMeanExcess = values.LeastMeanExcess + amount } });
            if (values.GreatestQuality >= amount)
            {
                yield return (problem, plan with { Values = values with { GreatestQuality = values.GreatestQuality - amount } });
            }

            if (values.LeastLargestStep.Ln > problem.EnoughStep.Ln)
            {
                yield return (problem, plan with { Values = values with { LeastLargestStep = new(values.LeastLargestStep.Ln + amount) } });
            }
        }

        yield return (problem, plan with { Outcome = Outcome.Infeasible, Purchases = [], Values = null });
        foreach (var item in plan.Purchases.Where(item => item.Price > 0 && !problem.Demands.MustInclude.Contains(item.Id)))
        {
            var twin = new Item(item.Id + "-twin", item.Optic)
            {
                Price = item.Price - Cent,
                MassGrams = item.MassGrams,
                ParfocalGroup = item.ParfocalGroup,
            };
            yield return (problem with { Catalogue = [.. problem.Catalogue, twin] }, plan);
        }
    }
}
