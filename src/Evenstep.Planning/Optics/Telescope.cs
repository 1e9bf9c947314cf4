namespace Evenstep.Planning.Optics;

/// <summary>A telescope: aperture and focal length in mm, and the barrel its focuser takes.</summary>
public sealed record Telescope(string Name, double ApertureMm, double FocalLengthMm, Barrel FocuserBarrel)
{
    public double ApertureMm { get; } = Bounds.ApertureMm.Check(ApertureMm, nameof(ApertureMm));

    public double FocalLengthMm { get; } = Bounds.TelescopeFocalLengthMm.Check(FocalLengthMm, nameof(FocalLengthMm));

    public double FocalRatio => FocalLengthMm / ApertureMm;

    /// <summary>
    /// Rayleigh's limit in arcseconds, 1.22 wavelengths over the aperture at 550 nm: 138.4 / D.
    /// OpenStax, College Physics 2e, section 27.6.
    /// </summary>
    public double RayleighArcsec => 138.4 / ApertureMm;

    /// <summary>
    /// Dawes' limit in arcseconds, 4.56 over the aperture in inches: 115.8 / D.
    /// W. R. Dawes, Memoirs of the Royal Astronomical Society 35 (1867) 137.
    /// </summary>
    public double DawesArcsec => 115.8 / ApertureMm;
}
