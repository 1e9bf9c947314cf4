namespace Evenstep.Planning.Optics;

/// <summary>The diameter of the tube that slides into a focuser or a Barlow, in inches as the trade names it.</summary>
public enum Barrel
{
    /// <summary>0.965 in (24.5 mm), found on small old refractors.</summary>
    Inch0965,

    /// <summary>1.25 in (31.75 mm).</summary>
    Inch125,

    /// <summary>2 in (50.8 mm).</summary>
    Inch2,
}

public static class BarrelFit
{
    /// <summary>A 1.25 in barrel fits a 2 in carrier through an adapter; any other must match.</summary>
    public static bool FitsInto(this Barrel barrel, Barrel carrier) =>
        barrel == carrier || (barrel == Barrel.Inch125 && carrier == Barrel.Inch2);

    /// <summary>
    /// The longest practical eyepiece for a focuser, in mm: about 50 degrees of apparent field fill the barrel there.
    /// 32 mm and 55 mm: Sky &amp; Telescope, "An Eyepiece Primer"; 25 mm for 0.965 in: common practice, no source.
    /// </summary>
    public static double LongestPracticalFocalLengthMm(this Barrel focuser) => focuser switch
    {
        Barrel.Inch0965 => 25,
        Barrel.Inch125 => 32,
        _ => 55,
    };
}
