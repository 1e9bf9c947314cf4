namespace Evenstep.Planning.Optics;

/// <summary>What speaks against a usable view, in the order in which it is told. All of it is common practice, no source.</summary>
[Flags]
public enum Drawbacks
{
    None = 0,

    /// <summary>The eyepiece or zoom gets a steeper light cone than it is made for, or the Barlow does.</summary>
    SteepCone = 1,

    /// <summary>Its eye relief is hardly above what is comfortable at this exit pupil, or below.</summary>
    TightEyeRelief = 2,

    NarrowField = 4,

    /// <summary>Its exit pupil is wider than the eye's, so that light is lost. Not said of zooms.</summary>
    WideExitPupil = 8,
}

/// <summary>Where a view begins to have a drawback.</summary>
public static class DrawbackLimits
{
    /// <summary>Eye relief, in mm, that should be there beyond what is comfortable.</summary>
    public const double SpareEyeReliefMm = 2;

    /// <summary>An apparent field below this, in degrees, is narrow.</summary>
    public const double NarrowFieldDeg = 50;

    /// <summary>An exit pupil of so many times the eye's pupil loses no light that anybody sees.</summary>
    public const double ExitPupilRatio = 1.05;
}
