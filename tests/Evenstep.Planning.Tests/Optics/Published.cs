namespace Evenstep.Planning.Tests.Optics;

/// <summary>Compares what is computed here with what is printed elsewhere.</summary>
internal static class Published
{
    /// <summary>For results that follow exactly: only the rounding of floating point is allowed.</summary>
    public const double Rounding = 1e-9;

    public const double ArcsecPerRadian = 180 * 3600 / Math.PI;

    public static void Agrees(double published, double computed, double within, string source) => Assert.True(
        Math.Abs(published - computed) <= within, $"{source}: published {published}, computed {computed}, allowed {within}.");
}

/// <summary>Compares what is computed here with what follows from the same definitions, worked out apart from this code: no source prints it.</summary>
internal static class Derived
{
    public static void Agrees(double derived, double computed, double within, string how) => Assert.True(
        Math.Abs(derived - computed) <= within, $"{how}: derived {derived}, computed {computed}, allowed {within}.");
}
