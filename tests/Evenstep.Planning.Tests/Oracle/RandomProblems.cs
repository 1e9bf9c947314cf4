namespace Evenstep.Planning.Tests.Oracle;

/// <summary>Problems that mix all features; the same seed always gives the same one.</summary>
public static class RandomProblems
{
    public static OracleProblem Make(int seed)
    {
        Random random = new(seed);
        while (true)
        {
            OracleProblem problem = new ProblemDraw(random).Draw();
            if (Exhaustive.RangesAreWideEnough(problem))
            {
                return problem;
            }
        }
    }

    /// <summary>Another in which it takes more purchases to be content, and more may be made.</summary>
    public static OracleProblem MakeDemanding(int seed)
    {
        OracleProblem problem = Make(seed);
        return problem with
        {
            Limits = problem.Limits with { Budget = 2 * problem.Limits.Budget, MaxPurchases = 4, MaxPricePerItem = null, MaxItemMassGrams = null },
            Preferences = problem.Preferences with { EnoughStep = 1.05, LeastStep = 1.02 },
        };
    }

    /// <summary>The same problem with everything listed in another order.</summary>
    public static OracleProblem Shuffle(OracleProblem p, int seed)
    {
        Random random = new(seed);
        return p with
        {
            Owned = InAnotherOrder(p.Owned, random),
            Catalogue = InAnotherOrder(p.Catalogue, random),
            Preferences = p.Preferences with
            {
                MustInclude = InAnotherOrder(p.Preferences.MustInclude, random),
                Exclude = InAnotherOrder(p.Preferences.Exclude, random),
            },
        };
    }

    internal static T[] InAnotherOrder<T>(IEnumerable<T> items, Random random)
    {
        T[] array = [.. items];
        random.Shuffle(array);
        return array;
    }
}
