using System.Collections.Immutable;
using System.Globalization;
using Evenstep.Benchmarks.Advised;

namespace Evenstep.Benchmarks.Reports;

/// <summary>How good the advice is, over the whole grid.</summary>
internal static class AdviceReport
{
    private const double MostSteepCones = 0.05;
    private const double LeastComfortable = 0.9;
    private const double Middle = 0.5;

    private static readonly ImmutableArray<string> Drawbacks = ["steep-cone", "tight-eye-relief", "narrow-field", "wide-exit-pupil"];

    public static string Of(ImmutableArray<Advice> advice)
    {
        ImmutableArray<AdvisedPlan> all = [.. advice.Select(one => one.Plan)];
        AdvisedPlan[] plans = [.. all.Where(plan => plan.Buys)];
        AdvisedPlan[] ample = [.. plans.Where(plan => plan.Request.Budget >= AdviceGrid.AmpleBudget)];
        return $"""
            ## Advice

            {all.Length} requests on the demo catalogue: each telescope, with what is owned (nothing, a 25 mm, a 25 and a 10 mm), an interest and a budget. Of
            the {plans.Length} plans that buy something, by budget; a view counts if it is usable and needs a purchase.

            {PlansTable(plans, ample)}
            {OutcomesTable(all)}
            Something owned called spare without which clearly less sky is to be seen: {all.Count(plan => plan.ShowsLessWithoutSpare)} requests (target: 0).
            {string.Concat(all.Where(plan => plan.ShowsLessWithoutSpare).Select(plan => $"\n- {plan.Request.Name}"))}

            {SteepCones.Of(advice)}
            """;
    }

    private static Table PlansTable(AdvisedPlan[] plans, AdvisedPlan[] ample)
    {
        int[] budgets = [.. plans.Select(plan => plan.Request.Budget).Distinct().Order()];
        AdvisedPlan[][] groups = [plans, ample, .. budgets.Select(budget => plans.Where(plan => plan.Request.Budget == budget).ToArray())];
        var table = new Table(
            1, ["", "all", $"{AdviceGrid.AmpleBudget} and more", .. budgets.Select(Show), "target"]);
        void Add(string name, Func<AdvisedPlan[], string> value, string target = "") => table.Add([name, .. groups.Select(value), target]);
        Add("plans that buy", group => Show(group.Length));
        foreach (var drawback in Drawbacks)
        {
            var target = drawback == "steep-cone" ? $"at most {Percent(MostSteepCones)} at {AdviceGrid.AmpleBudget} and more" : "";
            Add($"with a view of `{drawback}`", group => Share(group, plan => plan.HasBought(drawback)), target);
            Add($"with a purchase all of whose views have `{drawback}`", group => Share(group, plan => plan.HasOnly(drawback)));
        }

        Add("with a view beyond the high end", group => Share(group, plan => plan.GoesAboveRange));
        Add("with a Barlow", group => Share(group, plan => plan.BuysBarlow));
        Add("median price", group => Median(group, plan => plan.Price).ToString("F2", CultureInfo.InvariantCulture));
        Add("median served share", group => Percent(Median(group, plan => plan.ServedPercent) / 100));
        Add("median comfortable share", group => Percent(Median(group, plan => plan.ComfortablePercent) / 100));
        Add("comfortable over served, median", group => Ratio(Median(group, plan => plan.ComfortableOverServed)), $"at least {Ratio(LeastComfortable)}");
        return table;
    }

    private static Table OutcomesTable(ImmutableArray<AdvisedPlan> all)
    {
        var table = new Table(1, "outcome", "requests");
        foreach (var outcome in all.GroupBy(plan => plan.Outcome).OrderByDescending(group => group.Count()))
        {
            table.Add(outcome.Key, Show(outcome.Count()));
        }

        return table;
    }

    private static double Median(AdvisedPlan[] plans, Func<AdvisedPlan, double> value) =>
        plans.Length == 0 ? double.NaN : Numbers.Percentile([.. plans.Select(value).Order()], Middle);

    private static string Share(AdvisedPlan[] plans, Func<AdvisedPlan, bool> has) =>
        plans.Length == 0 ? "-" : Percent((double)plans.Count(has) / plans.Length);

    private static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:F1} %");

    private static string Ratio(double ratio) => ratio.ToString("F2", CultureInfo.InvariantCulture);

    private static string Show(int count) => count.ToString(CultureInfo.InvariantCulture);
}
