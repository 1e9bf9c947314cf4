using System.Collections.Immutable;
using System.Globalization;
using Evenstep.Benchmarks.Advised;
using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks.Reports;

/// <summary>Why steep cones are advised where the budget is ample: what the best plan without them would be.</summary>
internal static class SteepCones
{
    /// <summary>Answers give steps in hundredths.</summary>
    private const double StepRounding = 0.01;
    private const double ExcessLeewayPercent = 100 * StageValues.ExcessLeeway;

    public static string Of(ImmutableArray<Advice> all)
    {
        Advice[] steep = [.. all.Where(one => one.Without is not null)];
        var table = new Table(
            2, ["request", "budget", "largest step", "allowed", .. Beside("without", "mean excess, %", "comfortable, %", "price"), "without", "what decides"]);
        foreach (var alike in steep.GroupBy(one => (one.Plan.Request.Customer, Cells: string.Join('|', CellsOf(one.Plan, one.Without!)))))
        {
            var budgets = string.Join(", ", alike.Select(one => one.Plan.Request.Budget.ToString(CultureInfo.InvariantCulture)));
            table.Add([alike.Key.Customer, budgets, .. CellsOf(alike.First().Plan, alike.First().Without!)]);
        }

        return $"""
            ### Steep cones at budgets of {AdviceGrid.AmpleBudget} and more

            {steep.Length} requests. "Without": the best plan once every purchase that has such a view is excluded, until none is left.
            What decides is the first stage in which the plan without is worse than the planning model allows.

            {string.Concat(steep.GroupBy(one => Reason(one.Plan, one.Without!)).Select(group => $"- {group.Key}: {group.Count()}\n"))}
            {table}
            """;
    }

    private static IEnumerable<string> Beside(string first, params string[] heads) => heads.SelectMany(head => new[] { first, head });

    private static string[] CellsOf(AdvisedPlan plan, AdvisedPlan without) =>
    [
        Show(plan.LargestStep),
        Show(Allowed(plan)),
        Show(without.LargestStep),
        Show(plan.MeanExcessPercent),
        Show(without.MeanExcessPercent),
        Show(plan.ComfortablePercent),
        Show(without.ComfortablePercent),
        Show(plan.Price),
        Show(without.Price),
        Reason(plan, without),
    ];

    private static string Reason(AdvisedPlan plan, AdvisedPlan without) => without switch
    {
        { Outcome: "infeasible" } => "nothing else is allowed",
        _ when without.LargestStep > Allowed(plan) + StepRounding => "largest step",
        _ when without.MeanExcessPercent > plan.MeanExcessPercent + ExcessLeewayPercent => "mean excess",
        _ when without.ComfortablePercent < plan.ComfortablePercent => "quality elsewhere, or mean excess",
        // A wish goes by the widest view to be had, and so is smaller where items are excluded.
        _ when without.Price < plan.Price => "quality elsewhere, or the wish for a wide view",
        _ => "price",
    };

    private static double Allowed(AdvisedPlan plan) => Math.Pow(plan.LeastLargestStep, StageValues.StepLeeway);

    private static string Show(double value) => value.ToString("F2", CultureInfo.InvariantCulture);
}
