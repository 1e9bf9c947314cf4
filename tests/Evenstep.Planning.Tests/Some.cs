using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests;

/// <summary>Valid things to test with, all invented: a test names only what it is about.</summary>
public static class Some
{
    /// <summary>f/10: its exit pupils are 4, 2 and 1 mm at 25, 50 and 100 times.</summary>
    public static Telescope Telescope(
        double apertureMm = 100, double focalLengthMm = 1000, Barrel focuser = Barrel.Inch125, string name = "telescope") =>
        new(name, apertureMm, focalLengthMm, focuser);

    /// <summary>The telescope in use; without a range asked for, that of the observer under usual seeing.</summary>
    public static TelescopeInUse InUse(
        Telescope? telescope = null, double? lowest = null, double? highest = null, Observer? observer = null)
    {
        var (used, who) = (telescope ?? Telescope(), observer ?? new Observer());
        var range = PowerRange.Of(used, who, PowerRange.UsualSeeingArcsec, lowest, highest);
        return TelescopeInUse.Of(used, range, who.Observes);
    }

    /// <summary>The telescope with every power within its range.</summary>
    public static TelescopeInUse Unbounded(double apertureMm = 100, double focalLengthMm = 1000) =>
        InUse(Telescope(apertureMm, focalLengthMm, Barrel.Inch2), Bounds.Power.Least, Bounds.Power.Most);

    public static Item Eyepiece(
        double focalLengthMm,
        double apparentFieldDeg = 50,
        double eyeReliefMm = 16,
        Barrel barrel = Barrel.Inch125,
        string? id = null,
        decimal price = 100,
        double? fieldStopMm = null,
        EyepiecePurpose purpose = EyepiecePurpose.Observing) =>
        new(id ?? $"eyepiece-{focalLengthMm}", new Eyepiece(focalLengthMm, apparentFieldDeg, eyeReliefMm, barrel)
        {
            FieldStopMm = fieldStopMm,
            Purpose = purpose,
        })
        {
            Price = price,
        };

    public static Item Reticle(double focalLengthMm, string? id = null, Barrel barrel = Barrel.Inch125) =>
        Eyepiece(focalLengthMm, barrel: barrel, id: id ?? $"reticle-{focalLengthMm}", purpose: EyepiecePurpose.Reticle);

    public static Item Zoom(
        double shortestMm,
        double longestMm,
        double fieldAtShortestDeg = 60,
        double fieldAtLongestDeg = 42,
        double eyeReliefMm = 16,
        string? id = null,
        decimal price = 100) =>
        new(id ?? $"zoom-{shortestMm}-{longestMm}", new Zoom(shortestMm, longestMm, fieldAtShortestDeg, fieldAtLongestDeg, eyeReliefMm, Barrel.Inch125))
        {
            Price = price,
        };

    public static Item Barlow(double factor, string? id = null, Barrel barrel = Barrel.Inch125, decimal price = 100) =>
        BarlowOf([factor], id, barrel, price);

    public static Item BarlowOf(
        ImmutableArray<double> factors, string? id = null, Barrel barrel = Barrel.Inch125, decimal price = 100) =>
        new(id ?? $"barlow-{string.Join("-", factors)}", new Barlow(factors, barrel)) { Price = price };

    /// <summary>A problem with money and purchases enough that no limit is in the way.</summary>
    public static PurchaseProblem Problem(
        TelescopeInUse? telescope = null,
        ImmutableArray<Item> owned = default,
        Assortment? catalogue = null,
        Observer? observer = null) => new()
        {
            Telescopes = [telescope ?? InUse(observer: observer)],
            Observer = observer ?? new Observer(),
            Owned = owned.IsDefault ? [] : owned,
            Catalogue = catalogue ?? [],
            Limits = new Limits { Budget = 10000 },
        };
}
