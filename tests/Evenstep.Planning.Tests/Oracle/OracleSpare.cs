namespace Evenstep.Planning.Tests.Oracle;

/// <summary>Which owned items a kit can do without, found by taking every set of them away.</summary>
public sealed class OracleSpare
{
    private const double ExcessLeeway = 0.005;
    private const double ComfortLeeway = 0.01;
    private const double LeastShareOfField = 0.98;

    private readonly OracleSearch search;
    private readonly OracleItem[] bought;
    private readonly KitState whole;

    private OracleSpare(OracleProblem problem, IReadOnlyCollection<string> ids)
    {
        search = new OracleSearch(problem);
        bought = [.. search.Problem.Catalogue.Where(item => ids.Contains(item.Id))];
        whole = StateOf(search.Bench.Owned);
    }

    /// <summary>The owned items that are spare one at a time, by id.</summary>
    public static IReadOnlyList<string> Alone(OracleProblem problem, IReadOnlyCollection<string> ids)
    {
        OracleSpare spare = new(problem, ids);
        return [.. spare.search.Bench.Owned.Where(item => spare.IsAsGoodWithout([item])).Select(item => item.Id).Order(StringComparer.Ordinal)];
    }

    /// <summary>The largest sets of owned items that are spare all at once, of them those worth most, each by id.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Together(OracleProblem problem, IReadOnlyCollection<string> ids)
    {
        OracleSpare spare = new(problem, ids);
        IReadOnlyList<OracleItem> owned = spare.search.Bench.Owned;
        List<OracleItem[]> sets =
        [
            .. Enumerable.Range(0, 1 << owned.Count)
                .Select(mask => owned.Where((_, index) => (mask & (1 << index)) != 0).ToArray())
                .Where(spare.IsAsGoodWithout),
        ];
        int most = sets.Max(set => set.Length);
        sets.RemoveAll(set => set.Length < most);
        decimal worth = sets.Max(Worth);
        sets.RemoveAll(set => Worth(set) < worth);
        return [.. sets.Select(set => set.Select(item => item.Id).Order(StringComparer.Ordinal).ToArray())];

        static decimal Worth(OracleItem[] set) => set.Sum(item => item.Price);
    }

    private bool IsAsGoodWithout(OracleItem[] without)
    {
        if (search.Problem.Preferences.ReticleLeastPower is not null && without.Any(item => item.IsReticle))
        {
            return false;
        }

        OracleProblem problem = search.Problem;
        double excessAllowed = whole.Figures.MeanExcess + (problem.Has(OracleDefinitions.SpareExcess) ? ExcessLeeway : 0);
        double comfortAsked = problem.Has(OracleDefinitions.SpareComfort) ? whole.Figures.ComfortableShare - ComfortLeeway : 0;
        KitState rest = StateOf([.. search.Bench.Owned.Except(without)]);
        return !OracleTolerance.Above(StepOf(rest), StepOf(whole))
            && !OracleTolerance.Above(rest.Figures.MeanExcess, excessAllowed)
            && !OracleTolerance.Under(rest.Figures.ComfortableShare, comfortAsked)
            && (!problem.Has(OracleDefinitions.SpareField) || rest.WidestFields.Zip(whole.WidestFields).All(pair => IsAsWide(pair.First, pair.Second)))
            && whole.DemandsMet.Zip(rest.DemandsMet).All(pair => pair.Second || !pair.First);

        double StepOf(KitState state) => Math.Max(search.LnEnoughStep, state.Figures.LnLargestStep);
    }

    private static bool IsAsWide(double field, double before) =>
        before == 0 || (field > 0 && OracleTolerance.RatioAtLeast(field / before, LeastShareOfField));

    private KitState StateOf(IReadOnlyList<OracleItem> owned)
    {
        OracleItem[] kit = [.. owned, .. bought];
        OracleView[] views = [.. search.Bench.UsableViews(kit)];
        List<OracleView>[] byTelescope = [.. search.Bench.Scales.Select(scale => views.Where(view => view.Scale == scale).ToList())];
        OraclePreferences preferences = search.Problem.Preferences;
        return new KitState(
            search.Bench.Figures(byTelescope, search.Views.Counting).Counting,
            [.. byTelescope.Select(ones => ones.Select(view => view.TrueFieldDeg).DefaultIfEmpty(0).Max())],
            [
                .. preferences.MustFrame.Select(frame => views.Any(view => OracleBreaches.Frames(view, frame))),
                preferences.ReticleLeastPower is not { } power || search.Bench.HasServingReticle(kit, power),
            ]);
    }

    private sealed record KitState(OracleFigures Figures, IReadOnlyList<double> WidestFields, IReadOnlyList<bool> DemandsMet);
}
