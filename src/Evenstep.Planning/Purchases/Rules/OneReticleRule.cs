namespace Evenstep.Planning.Purchases;

/// <summary>Of the items bought at most one is a reticle eyepiece.</summary>
internal static class OneReticleRule
{
    public static IEnumerable<Breach> BrokenBy(Kit kit)
    {
        var count = kit.Purchases.Count(item => item.IsReticle);
        if (!Allows(count))
        {
            yield return new Breach.Reticles(count);
        }
    }

    public static bool Allows(int bought) => bought <= 1;
}

public abstract partial record Breach
{
    public sealed record Reticles(int Count) : Breach;
}
