namespace Evenstep.Planning.Purchases;

/// <summary>Of the items bought at most so many are Barlows.</summary>
internal static class BarlowCountRule
{
    public static IEnumerable<Breach> BrokenBy(Kit kit)
    {
        var count = kit.Purchases.Count(item => item.IsBarlow);
        if (Left(kit.Problem, count) < 0)
        {
            yield return new Breach.MaxBarlows(count, kit.Problem.Limits.MaxBarlows);
        }
    }

    /// <summary>How many more may be bought once so many are; negative if those are too many.</summary>
    public static int Left(PurchaseProblem problem, int bought) => problem.Limits.MaxBarlows - bought;
}

public abstract partial record Breach
{
    public sealed record MaxBarlows(int Count, int Limit) : Breach;
}
