using System.Collections.Immutable;
using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>
/// If a reticle eyepiece is asked for, the kit has one that fits a telescope and gives, alone or with a Barlow of the kit,
/// at least the power asked. Where none is asked for, or one is owned that serves, none is bought.
/// </summary>
internal static class ReticleRule
{
    public static IEnumerable<Breach> BrokenBy(Kit kit)
    {
        if (kit.Problem.Demands.ReticleLeastPower is { } asked && !Serves(kit, asked))
        {
            yield return new Breach.Reticle(asked);
        }
    }

    /// <summary>Whether the item is a reticle eyepiece, and none need be bought.</summary>
    public static bool Excludes(ItemAlone alone) =>
        alone.Item.IsReticle && (alone.Problem.Demands.ReticleLeastPower is null || alone.Owned.HasReticle);

    /// <summary>Whether a reticle eyepiece of the kit reaches the power asked.</summary>
    public static bool Serves(Kit kit, double asked) => Reaches(kit.ReticlePower(), asked);

    /// <summary>Whether a reticle eyepiece, alone or through one of the Barlows, reaches the power asked.</summary>
    public static bool Serves(PurchaseProblem problem, Item reticle, IReadOnlyCollection<Item> barlows, double asked) =>
        Reaches(Reticle.HighestPower(reticle, barlows, problem.Telescopes), asked);

    /// <summary>Whether one of the items is a reticle eyepiece that reaches the power asked, alone or through one of the Barlows.</summary>
    public static bool IsServedBy(PurchaseProblem problem, IEnumerable<Item> items, IReadOnlyCollection<Item> barlows, double asked) =>
        items.Any(item => item.IsReticle && Serves(problem, item, barlows, asked));

    private static bool Reaches(double? power, double asked) => power is { } highest && Tolerance.AtLeast(highest / asked, 1);
}

public abstract partial record Breach
{
    public sealed record Reticle(double LeastPower) : Breach;
}

/// <summary>What a reticle eyepiece is good for.</summary>
public static class Reticle
{
    /// <summary>The highest power of a reticle eyepiece in any telescope, alone or through one of the Barlows; null if it
    /// fits no telescope.</summary>
    public static double? HighestPower(Item reticle, IReadOnlyCollection<Item> barlows, ImmutableArray<TelescopeInUse> telescopes) =>
        telescopes.Max(telescope => HighestPowerIn(telescope.Telescope, (Eyepiece)reticle.Optic, barlows));

    private static double? HighestPowerIn(Telescope telescope, Eyepiece reticle, IReadOnlyCollection<Item> barlows)
    {
        if (!reticle.Barrel.FitsInto(telescope.FocuserBarrel))
        {
            return null;
        }

        var highestFactor = barlows.Select(item => (Barlow)item.Optic)
            .Where(barlow => reticle.Barrel.FitsInto(barlow.Barrel) && barlow.Barrel.FitsInto(telescope.FocuserBarrel))
            .Select(barlow => barlow.Factors[^1])
            .Prepend(1)
            .Max();
        return telescope.FocalLengthMm * highestFactor / reticle.FocalLengthMm;
    }
}
