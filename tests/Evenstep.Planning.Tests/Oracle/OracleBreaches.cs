namespace Evenstep.Planning.Tests.Oracle;

/// <summary>
/// The five rules of an allowed set, asked one by one of items of the catalogue that are bought, candidates or not. None
/// of them is owned already.
/// </summary>
public static class OracleBreaches
{
    /// <summary>The codes of the rules broken: `overlap` once for each pair of views, a demand's once for each demand.</summary>
    public static IReadOnlyList<string> Of(OracleProblem problem, IReadOnlyCollection<string> ids)
    {
        OracleBench bench = new(problem);
        OracleItem[] list = [.. bench.Problem.Catalogue.Where(item => ids.Contains(item.Id))];
        return [.. OfLimits(problem.Limits, list), .. OfOverlaps(bench, list), .. OfDemands(bench, list)];
    }

    private static IEnumerable<string> OfLimits(OracleLimits limits, OracleItem[] list)
    {
        (string Code, bool IsBroken)[] rules =
        [
            ("budget", list.Sum(item => item.Price) > limits.Budget),
            ("max-purchases", list.Length > (limits.MaxPurchases ?? OracleSearch.DefaultMaxPurchases)),
            ("max-barlows", list.Count(item => item.Kind == OracleKind.Barlow) > (limits.MaxBarlows ?? OracleSearch.DefaultMaxBarlows)),
            ("reticles", list.Count(item => item.IsReticle) > 1),
        ];
        return rules.Where(rule => rule.IsBroken).Select(rule => rule.Code);
    }

    private static IEnumerable<string> OfOverlaps(OracleBench bench, OracleItem[] list)
    {
        OracleView[] views = [.. bench.UsableViews([.. bench.Owned, .. list])];
        int count = 0;
        for (int i = 0; i < views.Length; i++)
        {
            for (int j = i + 1; j < views.Length; j++)
            {
                bool needsPurchase = IsBought(views[i], list) || IsBought(views[j], list);
                count += needsPurchase && OracleOverlap.Overlap(views[i], views[j]) ? 1 : 0;
            }
        }

        return Enumerable.Repeat("overlap", count > (bench.Problem.Limits.AllowedOverlaps ?? 0) ? count : 0);
    }

    private static IEnumerable<string> OfDemands(OracleBench bench, OracleItem[] list)
    {
        OraclePreferences preferences = bench.Problem.Preferences;
        OracleItem[] kit = [.. bench.Owned, .. list];
        OracleView[] views = [.. bench.UsableViews(kit)];
        bool lacksReticle = preferences.ReticleLeastPower is { } power && !bench.HasServingReticle(kit, power);
        return
        [
            .. preferences.MustInclude.Distinct().Where(id => list.All(item => item.Id != id)).Select(_ => "must-include"),
            .. preferences.MustFrame.Where(frame => !views.Any(view => Frames(view, frame))).Select(_ => "must-frame"),
            .. lacksReticle ? ["reticle"] : Array.Empty<string>(),
        ];
    }

    private static bool IsBought(OracleView view, OracleItem[] list) =>
        list.Contains(view.Eyepiece) || (view.Barlow is { } barlow && list.Contains(barlow));

    internal static bool Frames(OracleView view, OracleFrame frame) =>
        (frame.Telescope is null || view.Scale.Telescope.Name == frame.Telescope)
        && OracleTolerance.RatioAtLeast(view.TrueFieldDeg, frame.WidthDeg);
}
