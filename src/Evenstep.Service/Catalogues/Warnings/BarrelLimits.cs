using Evenstep.Planning.Optics;

namespace Evenstep.Service.Catalogues.Warnings;

/// <summary>How wide a field stop a barrel has room for.</summary>
internal static class BarrelLimits
{
    /// <summary>Makers measure differently; nobody is warned of less.</summary>
    public const double GraceMm = 1;

    /// <summary>
    /// The inner diameter, in mm: common practice, no source; some 3.75 mm less than the barrel's outer diameter.
    /// </summary>
    public static double WidestFieldStopMm(this Barrel barrel) => barrel switch
    {
        Barrel.Inch0965 => 21,
        Barrel.Inch125 => 28,
        _ => 47,
    };
}
