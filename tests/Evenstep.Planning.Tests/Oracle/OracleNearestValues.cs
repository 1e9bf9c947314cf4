namespace Evenstep.Planning.Tests.Oracle;

/// <summary>
/// For an infeasible problem the nearest value of each limit that would alone make an allowed set possible.
/// Each limit is put at its bound and all sets are tried: whatever a tighter value allows, a looser one
/// allows too, so the nearest value is the least that some set allowed at the bound makes use of.
/// </summary>
internal static class OracleNearestValues
{
    private const decimal LargestBudget = 1_000_000;
    private const int MostPurchases = 8;
    private const int MostBarlows = 4;
    private const int MostOverlaps = 20;
    private const double NarrowestWidthDeg = 0.01;

    public static OracleNearest Of(OracleProblem problem) => new(
        Budget(problem),
        Purchases(problem),
        Barlows(problem),
        Overlaps(problem),
        [.. problem.Preferences.MustFrame.Select((_, index) => Width(problem, index))])
    {
        MaxPricePerItem = problem.Limits.MaxPricePerItem is null ? null : ItemPrice(problem),
        MaxItemMassGrams = problem.Limits.MaxItemMassGrams is null ? null : ItemMass(problem),
    };

    /// <remarks>
    /// At a budget of just its total price a set's items stay candidates, for none costs more than all together
    /// and no other exclusion looks at the budget. So the cheapest set allowed at the bound names the nearest budget.
    /// </remarks>
    private static decimal? Budget(OracleProblem problem)
    {
        OracleSearch search = new(WithLimits(problem, problem.Limits with { Budget = LargestBudget }));
        return search.AllowedSets().Select(set => (decimal?)search.Price(set)).Min();
    }

    /// <remarks>No exclusion looks at the number of purchases: the smallest allowed set names it.</remarks>
    private static int? Purchases(OracleProblem problem)
    {
        OracleSearch search = new(WithLimits(problem, problem.Limits with { MaxPurchases = MostPurchases }));
        return search.AllowedSets().Select(set => (int?)search.Items(set).Count()).Min();
    }

    /// <remarks>No exclusion looks at the number of Barlows either.</remarks>
    private static int? Barlows(OracleProblem problem)
    {
        OracleSearch search = new(WithLimits(problem, problem.Limits with { MaxBarlows = MostBarlows }));
        return search.AllowedSets().Select(set => (int?)search.Barlows(set)).Min();
    }

    /// <remarks>
    /// The overlaps that an item makes when bought alone are among those of every set that holds it, so with
    /// the overlaps of a set allowed its items stay candidates.
    /// </remarks>
    private static int? Overlaps(OracleProblem problem)
    {
        OracleSearch search = new(WithLimits(problem, problem.Limits with { AllowedOverlaps = MostOverlaps }));
        return search.AllowedSets().Select(set => (int?)search.Overlaps(set)).Min();
    }

    /// <remarks>At a limit of the dearest item of a set its items stay candidates, for no other exclusion looks at that limit.</remarks>
    private static decimal? ItemPrice(OracleProblem problem)
    {
        OracleSearch search = new(WithLimits(problem, problem.Limits with { MaxPricePerItem = null }));
        return search.AllowedSets().Select(set => search.Items(set).Max(item => (decimal?)item.Price)).Min();
    }

    /// <remarks>The same by the heaviest; an item of unknown mass is never too heavy.</remarks>
    private static double? ItemMass(OracleProblem problem)
    {
        OracleSearch search = new(WithLimits(problem, problem.Limits with { MaxItemMassGrams = null }));
        return search.AllowedSets().Select(set => search.Items(set).Max(item => item.MassGrams)).Min();
    }

    /// <remarks>
    /// Without the demand the same items are candidates; the widest field of any set then allowed is the greatest
    /// width that it could have asked for.
    /// </remarks>
    private static double? Width(OracleProblem problem, int index)
    {
        OracleFrame demand = problem.Preferences.MustFrame[index];
        OracleFrame[] others = [.. problem.Preferences.MustFrame.Where((_, other) => other != index)];
        OracleSearch search = new(problem with { Preferences = problem.Preferences with { MustFrame = others } });
        double widest = search.AllowedSets().Select(set => search.WidestField(set, demand.Telescope)).DefaultIfEmpty(0).Max();
        double rounded = Math.Floor(widest * (1 + OracleTolerance.Epsilon) * 100) / 100;
        return rounded >= NarrowestWidthDeg ? rounded : null;
    }

    private static OracleProblem WithLimits(OracleProblem problem, OracleLimits limits) => problem with { Limits = limits };
}
