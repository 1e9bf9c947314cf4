namespace Evenstep.Planning.Purchases;

/// <summary>
/// Over all telescopes, at most so many pairs of views overlap where at least one of the two needs a bought item. What an
/// overlap is says <see cref="Overlap"/>.
/// </summary>
internal static class OverlapRule
{
    public static IEnumerable<Breach> BrokenBy(Kit kit)
    {
        var count = kit.OverlapsThroughPurchases();
        if (Left(kit.Problem, count) < 0)
        {
            yield return new Breach.Overlaps(count, kit.Problem.Limits.AllowedOverlaps);
        }
    }

    /// <summary>How many more pairs may overlap once so many do; negative if those are too many.</summary>
    public static int Left(PurchaseProblem problem, int pairs) => problem.Limits.AllowedOverlaps - pairs;
}

public abstract partial record Breach
{
    public sealed record Overlaps(int Count, int Limit) : Breach;
}
