namespace Evenstep.Planning.Tests.Oracle;

/// <summary>Solves the purchase problem by trying every set of candidates.</summary>
public static class Exhaustive
{
    private const double StepAllowance = 1.10;
    private const double ExcessAllowance = 0.005;
    private const double WishedShareOfWidest = 0.75;

    public static OracleResult Solve(OracleProblem problem)
    {
        OracleSearch search = new(problem);
        List<int> allowed = [.. search.AllowedSets()];
        double wished = WishedField(search);
        List<int> granting = [.. allowed.Where(set => GrantsWish(search, set, wished))];
        OracleResult result = new()
        {
            Outcome = allowed.Count > 0 ? OracleOutcome.Solved : OracleOutcome.Infeasible,
            Exclusions = search.Exclusions,
            BuyNothing = search.Figures(0),
            AllowedSetCount = allowed.Count,
            WishAsked = wished > 0,
            WishGranted = granting.Count > 0,
        };
        if (allowed.Count == 0)
        {
            return result with { Nearest = OracleNearestValues.Of(problem) };
        }

        return Elect(search, granting.Count > 0 ? granting : allowed, result);
    }

    /// <summary>The figures of a set of candidates, allowed or not.</summary>
    public static OraclePlan Assess(OracleProblem problem, IReadOnlyCollection<string> ids)
    {
        OracleSearch search = new(problem);
        int set = search.SetOf(ids);
        if (search.Items(set).Count() != ids.Count)
        {
            throw new ArgumentException("Not all of these are candidates.", nameof(ids));
        }

        return Plan(search, set);
    }

    /// <summary>Every set that obeys the five rules, with its figures.</summary>
    public static IReadOnlyList<OraclePlan> AllowedSets(OracleProblem problem)
    {
        OracleSearch search = new(problem);
        return [.. search.AllowedSets().Select(set => Plan(search, set))];
    }

    /// <summary>The allowed sets that stand for election: those that grant the wish for a wide view, if there is one and any does.</summary>
    public static IReadOnlyList<OraclePlan> Standing(OracleProblem problem)
    {
        OracleSearch search = new(problem);
        List<int> allowed = [.. search.AllowedSets()];
        double wished = WishedField(search);
        List<int> granting = [.. allowed.Where(set => GrantsWish(search, set, wished))];
        return [.. (granting.Count > 0 ? granting : allowed).Select(set => Plan(search, set))];
    }

    /// <summary>Whether every telescope's power range is wide enough for the request to be taken.</summary>
    public static bool RangesAreWideEnough(OracleProblem problem) =>
        new OracleBench(problem).Scales.All(scale => scale.IsWideEnough);

    private static OracleResult Elect(OracleSearch search, List<int> standing, OracleResult result)
    {
        List<OraclePlan> plans = [.. standing.Select(set => Plan(search, set))];

        double leastStep = plans.Min(StepOf);
        plans.RemoveAll(plan => OracleTolerance.Above(StepOf(plan), StepAllowance * leastStep));

        double leastExcess = plans.Min(plan => plan.Figures.Kit.MeanExcess);
        plans.RemoveAll(plan => OracleTolerance.Above(plan.Figures.Kit.MeanExcess, leastExcess + ExcessAllowance));

        double bestPreference = plans.Min(plan => plan.PreferenceValue);
        plans.RemoveAll(plan => OracleTolerance.Above(plan.PreferenceValue, bestPreference));

        decimal bestPrice = plans.Min(plan => plan.Price);
        plans.RemoveAll(plan => plan.Price > bestPrice);

        int bestCount = plans.Min(plan => plan.Ids.Count);
        plans.RemoveAll(plan => plan.Ids.Count > bestCount);

        return result with
        {
            LeastLargestStep = Math.Exp(leastStep),
            LeastMeanExcess = leastExcess,
            BestPreferenceValue = bestPreference,
            BestPrice = bestPrice,
            BestCount = bestCount,
            BestSets = [.. plans.OrderBy(plan => string.Join('\n', plan.Ids), StringComparer.Ordinal)],
        };

        double StepOf(OraclePlan plan) => Math.Max(search.LnEnoughStep, plan.Figures.Kit.LnLargestStep);
    }

    private static OraclePlan Plan(OracleSearch search, int set)
    {
        List<OracleItem> items = [.. search.Items(set)];
        return new OraclePlan(
            [.. items.Select(item => item.Id).Order(StringComparer.Ordinal)],
            search.Price(set),
            OraclePreference.Value(search.Bench, items),
            search.Figures(set),
            search.IsAllowed(set));
    }

    /// <summary>The true field wished for; 0 when no wide view is wished or nothing gives any.</summary>
    private static double WishedField(OracleSearch search)
    {
        if (!search.Problem.Observer.Observes.Contains(OracleInterest.LargeNebulae))
        {
            return 0;
        }

        IEnumerable<OracleItem> items = [.. search.Bench.Owned, .. search.Candidates];
        return WishedShareOfWidest * items
            .SelectMany(item => search.Bench.UsableViews([item]))
            .Select(view => view.TrueFieldDeg)
            .DefaultIfEmpty(0)
            .Max();
    }

    private static bool GrantsWish(OracleSearch search, int set, double wished)
    {
        double widest = wished > 0 ? search.WidestField(set, null) : 0;
        return widest > 0 && OracleTolerance.RatioAtLeast(widest, wished);
    }
}
