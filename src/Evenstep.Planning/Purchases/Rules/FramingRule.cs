using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>
/// For every framing demand, some usable view of the kit, in the telescope it names or else in any, has a true field of at
/// least the width asked.
/// </summary>
public static class FramingRule
{
    internal static IEnumerable<Breach> BrokenBy(Kit kit) =>
        kit.Problem.Demands.MustFrame.Where(framing => !Frames(kit, framing.WidthDeg, framing.TelescopeIndex)).Select(framing => new Breach.MustFrame(framing));

    /// <summary>Whether some usable view, in one telescope or in any, has at least this true field in degrees.</summary>
    public static bool Frames(Kit kit, double widthDeg, int? telescopeIndex) =>
        kit.WidestFieldDeg(telescopeIndex) is { } widest && IsWide(widest, widthDeg);

    /// <summary>Whether a true field frames so wide an object; both in degrees.</summary>
    internal static bool IsWide(double trueFieldDeg, double widthDeg) => Tolerance.AtLeast(trueFieldDeg / widthDeg, 1);
}

public abstract partial record Breach
{
    public sealed record MustFrame(FramingDemand Framing) : Breach;
}
