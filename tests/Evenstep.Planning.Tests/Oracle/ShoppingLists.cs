namespace Evenstep.Planning.Tests.Oracle;

/// <summary>What somebody might mean to buy; the same seed always gives the same.</summary>
public static class ShoppingLists
{
    private const int MostListed = 6;

    /// <summary>Ids of items of the catalogue that are not owned, candidates or not. Often it holds what is demanded, for a
    /// list drawn blindly breaks every rule at once.</summary>
    public static string[] Draw(OracleProblem problem, int seed)
    {
        Random random = new(seed);
        HashSet<string> owned = [.. problem.Owned.Select(one => one.Id)];
        OracleItem[] forSale = RandomProblems.InAnotherOrder(problem.Catalogue.Where(item => !owned.Contains(item.Id)), random);
        IEnumerable<OracleItem> wanted = random.Next(3) > 0 ? forSale.Where(item => IsWanted(item, problem)) : [];
        IEnumerable<OracleItem> reticles = random.Next(4) == 0 ? forSale.Where(item => item.IsReticle).Take(2) : [];
        return [.. wanted.Concat(reticles).Concat(forSale.Take(random.Next(MostListed))).Select(item => item.Id).Distinct()];
    }

    private static bool IsWanted(OracleItem item, OracleProblem problem) => problem.Preferences.MustInclude.Contains(item.Id);
}
