using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>One way to use a reticle eyepiece.</summary>
/// <param name="Reticle">The eyepiece.</param>
/// <param name="Barlow">The Barlow it is looked through, or null.</param>
/// <param name="Telescope">The telescope.</param>
/// <param name="Power">The power that it gives so.</param>
internal sealed record ReticleUse(Item Reticle, Item? Barlow, TelescopeInUse Telescope, double Power);

/// <summary>The powers that reticle eyepieces of a kit give.</summary>
internal static class ReticlePowers
{
    /// <summary>The plainest use that gives at least a power: alone rather than through a Barlow, then the lowest power that will
    /// do. Null if none gives so much.</summary>
    /// <param name="kit">What there is.</param>
    /// <param name="item">The reticle eyepiece, or the Barlow, that is used.</param>
    /// <param name="leastPower">The power asked.</param>
    public static ReticleUse? PlainestFor(Kit kit, Item item, double leastPower) => AllOf(kit)
        .Where(use => item.Equals(use.Reticle) || item.Equals(use.Barlow))
        .Where(use => Tolerance.AtLeast(use.Power / leastPower, 1))
        .OrderBy(use => use.Barlow is not null).ThenBy(use => use.Power)
        .ThenBy(use => use.Reticle.Id, StringComparer.Ordinal).ThenBy(use => use.Barlow?.Id, StringComparer.Ordinal)
        .FirstOrDefault();

    private static IEnumerable<ReticleUse> AllOf(Kit kit)
    {
        Item[] items = [.. kit.Items.Distinct()];
        return
            from reticle in items
            where reticle.IsReticle
            from telescope in kit.Problem.Telescopes
            from barlow in items.Where(item => item.IsBarlow).Prepend(null)
            where Fits(reticle, barlow, telescope.Telescope.FocuserBarrel)
            from factor in (barlow?.Optic as Barlow)?.Factors ?? [1]
            select new ReticleUse(reticle, barlow, telescope, telescope.Telescope.FocalLengthMm * factor / reticle.Ocular!.LongestFocalLengthMm);
    }

    private static bool Fits(Item reticle, Item? barlow, Barrel focuser) => barlow is null
        ? reticle.Optic.Barrel.FitsInto(focuser)
        : reticle.Optic.Barrel.FitsInto(barlow.Optic.Barrel) && barlow.Optic.Barrel.FitsInto(focuser);
}
