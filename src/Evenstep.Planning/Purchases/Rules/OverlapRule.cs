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

    /// <summary>Whether the item alone repeats more of what is owned, or of itself, than allowed.</summary>
    public static bool Excludes(ItemAlone alone) => Left(alone.Problem, alone.Owned.OverlapsThrough(alone.Item)) < 0;

    /// <summary>How many more pairs may overlap once so many do; negative if those are too many.</summary>
    public static int Left(PurchaseProblem problem, int pairs) => problem.Limits.AllowedOverlaps - pairs;
}

public abstract partial record Breach
{
    public sealed record Overlaps(int Count, int Limit) : Breach;
}
