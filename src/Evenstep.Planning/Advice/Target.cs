namespace Evenstep.Planning.Advice;

/// <summary>Something to look at.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="WidthArcmin">How wide it is, in arcminutes.</param>
/// <param name="WantedExitPupilMm">The exit pupil, in mm, that shows it best.</param>
public sealed record Target(string Name, double WidthArcmin, double WantedExitPupilMm);
