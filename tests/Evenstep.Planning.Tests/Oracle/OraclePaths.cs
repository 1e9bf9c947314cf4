namespace Evenstep.Planning.Tests.Oracle;

/// <summary>An order of purchases that ends where a buying path must end.</summary>
public sealed record OraclePath(IReadOnlyList<string> Ids, decimal Price, double GreatestLoss, decimal FirstPrice);

/// <summary>All buying paths of a small problem, found by trying every order of every set.</summary>
public sealed class OraclePaths
{
    private const double LossAllowance = 0.05;

    private readonly OracleSearch search;
    private readonly OracleSpending spending;
    private readonly HashSet<int> ends;
    private readonly Dictionary<int, double> losses = [];
    private readonly List<OraclePath> paths = [];

    private OraclePaths(OracleProblem problem)
    {
        search = new OracleSearch(problem);
        spending = OracleSpending.Of(problem);
        ends = [.. Ends()];
        Extend([], 0, 0);
    }

    /// <summary>The best paths, equal in everything but the fixed rule; none if no set is allowed.</summary>
    public static IReadOnlyList<OraclePath> Best(OracleProblem problem)
    {
        List<OraclePath> standing = new OraclePaths(problem).paths;
        if (standing.Count == 0)
        {
            return [];
        }

        double leastLoss = standing.Min(path => path.GreatestLoss);
        standing.RemoveAll(path => OracleTolerance.Above(path.GreatestLoss, leastLoss + (problem.Has(OracleDefinitions.LossLeeway) ? LossAllowance : 0)));

        decimal leastPrice = standing.Min(path => path.Price);
        standing.RemoveAll(path => path.Price > leastPrice);

        double leastOfThese = standing.Min(path => path.GreatestLoss);
        standing.RemoveAll(path => OracleTolerance.Above(path.GreatestLoss, leastOfThese));

        decimal leastFirst = standing.Min(path => path.FirstPrice);
        standing.RemoveAll(path => path.FirstPrice > leastFirst);
        return standing;
    }

    /// <summary>The least greatest loss of any path; null if there is none.</summary>
    public static double? LeastLoss(OracleProblem problem) => new OraclePaths(problem).paths.Min(path => (double?)path.GreatestLoss);

    /// <summary>The sets that meet the first stage of an election at the full budget; the wish has no part in it.</summary>
    private IEnumerable<int> Ends()
    {
        List<int> allowed = [.. search.AllowedSets()];
        double least = allowed.Count == 0 ? 0 : allowed.Min(StepOf);
        return allowed.Where(set => !OracleTolerance.Above(StepOf(set), OracleElection.StepAllowed(search.Problem, least)));
    }

    private void Extend(List<string> order, int set, double greatest)
    {
        if (ends.Contains(set))
        {
            decimal first = order.Count == 0 ? 0 : search.Price(search.SetOf([order[0]]));
            paths.Add(new OraclePath([.. order], search.Price(set), greatest, first));
        }

        for (int i = 0; i < search.Candidates.Count; i++)
        {
            int next = set | (1 << i);
            if (next != set && search.ObeysLimitsAndOverlap(next))
            {
                order.Add(search.Candidates[i].Id);
                Extend(order, next, Math.Max(greatest, Loss(next)));
                order.RemoveAt(order.Count - 1);
            }
        }
    }

    private double Loss(int set)
    {
        if (!losses.TryGetValue(set, out double loss))
        {
            loss = spending.LeastLnStep(search.Price(set)) is { } best
                ? Math.Max(0, Math.Exp(StepOf(set) - best) - 1)
                : 0;
            losses[set] = loss;
        }

        return loss;
    }

    private double StepOf(int set) => Math.Max(search.LnEnoughStep, search.Figures(set).Counting.LnLargestStep);
}
