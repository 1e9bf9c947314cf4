using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>A rule of an allowed set that a set of purchases breaks.</summary>
public abstract record Breach
{
    public sealed record Budget(decimal TotalPrice, decimal Limit) : Breach;

    public sealed record MaxPurchases(int Count, int Limit) : Breach;

    public sealed record MaxBarlows(int Count, int Limit) : Breach;

    public sealed record Reticles(int Count) : Breach;

    public sealed record Overlaps(int Count, int Limit) : Breach;

    public sealed record MustInclude(string ItemId) : Breach;

    public sealed record MustFrame(FramingDemand Framing) : Breach;

    public sealed record Reticle(double LeastPower) : Breach;
}

/// <summary>The rules of an allowed set, in plain code.</summary>
public static class Breaches
{
    /// <summary>Every rule that the kit's purchases break.</summary>
    public static IEnumerable<Breach> Of(Kit kit)
    {
        var (limits, demands) = (kit.Problem.Limits, kit.Problem.Demands);
        if (kit.TotalPrice > limits.Budget)
        {
            yield return new Breach.Budget(kit.TotalPrice, limits.Budget);
        }

        if (kit.Purchases.Length > limits.MaxPurchases)
        {
            yield return new Breach.MaxPurchases(kit.Purchases.Length, limits.MaxPurchases);
        }

        var barlows = kit.Purchases.Count(item => item.IsBarlow);
        if (barlows > limits.MaxBarlows)
        {
            yield return new Breach.MaxBarlows(barlows, limits.MaxBarlows);
        }

        var reticles = kit.Purchases.Count(item => item.IsReticle);
        if (reticles > 1)
        {
            yield return new Breach.Reticles(reticles);
        }

        var overlaps = kit.OverlapsThroughPurchases();
        if (overlaps > limits.AllowedOverlaps)
        {
            yield return new Breach.Overlaps(overlaps, limits.AllowedOverlaps);
        }

        foreach (var id in demands.MustInclude.Where(id => kit.Purchases.All(item => item.Id != id)))
        {
            yield return new Breach.MustInclude(id);
        }

        foreach (var framing in demands.MustFrame.Where(framing => !Frames(kit, framing.WidthDeg, framing.TelescopeIndex)))
        {
            yield return new Breach.MustFrame(framing);
        }

        if (demands.ReticleLeastPower is { } asked && !(kit.ReticlePower() is { } has && Tolerance.AtLeast(has / asked, 1)))
        {
            yield return new Breach.Reticle(asked);
        }
    }

    /// <summary>Whether some usable view, in one telescope or in any, has at least this true field in degrees.</summary>
    public static bool Frames(Kit kit, double widthDeg, int? telescopeIndex) =>
        kit.WidestFieldDeg(telescopeIndex) is { } widest && Tolerance.AtLeast(widest / widthDeg, 1);
}
