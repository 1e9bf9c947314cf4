namespace Evenstep.Planning.Tests.Oracle;

/// <summary>Chooses the best of the allowed sets, stage by stage.</summary>
internal sealed class OracleElection(OracleSearch search)
{
    public const double StepLeeway = 1.15;

    private const double ExcessLeeway = 0.005;
    private const double QualityLeeway = 0.03;
    private const double WishedShareOfWidest = 0.75;

    private OracleProblem Problem => search.Problem;

    public static double StepAllowed(OracleProblem problem, double lnLeastStep) =>
        (problem.Has(OracleDefinitions.StepLeeway) ? StepLeeway : 1) * lnLeastStep;

    /// <summary>max(E, ln largest step) over the telescopes that count.</summary>
    public static double StepOf(OracleSearch search, OraclePlan plan) =>
        Math.Max(search.LnEnoughStep, plan.Figures.Counting.LnLargestStep);

    /// <param name="allowed">At least one.</param>
    /// <param name="result">What is known before.</param>
    public OracleResult Elect(IEnumerable<int> allowed, OracleResult result)
    {
        List<Entry> left = [.. allowed.Select(set => new Entry(set, Exhaustive.Plan(search, set)))];
        double wished = WishedField();
        result = result with { WishAsked = wished > 0, WishedFieldDeg = wished };
        bool wishComesFirst = !Problem.Has(OracleDefinitions.WishAfterStep);
        bool granted = wishComesFirst && Wish(left, wished);

        double leastStep = left.Min(entry => StepOf(search, entry.Plan));
        double stepAllowed = StepAllowed(Problem, leastStep);
        left.RemoveAll(entry => OracleTolerance.Above(StepOf(search, entry.Plan), stepAllowed));
        granted |= !wishComesFirst && Wish(left, wished);
        result = result with { LeastLargestStep = Math.Exp(leastStep), WishGranted = granted };

        double leastExcess = left.Min(entry => entry.Plan.Figures.Counting.MeanExcess);
        double excessAllowed = leastExcess + (Problem.Has(OracleDefinitions.ExcessLeeway) ? ExcessLeeway : 0);
        left.RemoveAll(entry => OracleTolerance.Above(entry.Plan.Figures.Counting.MeanExcess, excessAllowed));
        result = result with { LeastMeanExcess = leastExcess };

        if (Problem.Preferences.Prefer != OraclePrefer.LowPrice && Problem.Has(OracleDefinitions.Quality))
        {
            result = result with { BestQuality = KeepGood(ref left, stepAllowed) };
        }

        return KeepCheap(left, result);
    }

    private double KeepGood(ref List<Entry> left, double stepAllowed)
    {
        OracleKitQuality quality = new(search, stepAllowed);
        left = [.. left.Select(entry => entry with { Plan = entry.Plan with { Quality = quality.Of(entry.Set) } })];
        double best = left.Max(entry => entry.Plan.Quality!.Value);
        double least = best - (Problem.Has(OracleDefinitions.QualityLeeway) ? QualityLeeway : 0);
        left.RemoveAll(entry => OracleTolerance.Under(entry.Plan.Quality!.Value, least));
        return best;
    }

    private OracleResult KeepCheap(List<Entry> left, OracleResult result)
    {
        double bestPreference = left.Min(entry => entry.Plan.PreferenceValue);
        if (Problem.Has(OracleDefinitions.LastPreference))
        {
            left.RemoveAll(entry => OracleTolerance.Above(entry.Plan.PreferenceValue, bestPreference));
        }

        decimal bestPrice = left.Min(entry => entry.Plan.Price);
        left.RemoveAll(entry => entry.Plan.Price > bestPrice);

        int bestCount = left.Min(entry => entry.Plan.Ids.Count);
        left.RemoveAll(entry => entry.Plan.Ids.Count > bestCount);

        return result with
        {
            BestPreferenceValue = bestPreference,
            BestPrice = bestPrice,
            BestCount = bestCount,
            BestSets = [.. left.Select(entry => entry.Plan).OrderBy(plan => string.Join('\n', plan.Ids), StringComparer.Ordinal)],
        };
    }

    /// <summary>Lets only those go on that grant the wish, if any does; says whether any does.</summary>
    private bool Wish(List<Entry> left, double wished)
    {
        if (wished == 0 || !left.Exists(Grants))
        {
            return false;
        }

        left.RemoveAll(entry => !Grants(entry));
        return true;

        bool Grants(Entry entry)
        {
            double widest = search.WidestField(entry.Set, null);
            return widest > 0 && OracleTolerance.RatioAtLeast(widest, wished);
        }
    }

    /// <summary>The true field wished for; 0 when no wide view is wished or nothing gives any.</summary>
    private double WishedField()
    {
        if (!Problem.Observer.Observes.Contains(OracleInterest.LargeNebulae) || !Problem.Has(OracleDefinitions.Wish))
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

    private sealed record Entry(int Set, OraclePlan Plan);
}
