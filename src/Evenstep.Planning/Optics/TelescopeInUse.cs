using System.Collections.Immutable;

namespace Evenstep.Planning.Optics;

/// <summary>A telescope as one observer uses it under one sky: with its power range laid out on an axis.</summary>
public sealed record TelescopeInUse(Telescope Telescope, PowerRange Range, PowerAxis Axis)
{
    /// <summary>The logarithm of the focal length.</summary>
    internal double LnFocalLength { get; } = Math.Log(Telescope.FocalLengthMm);

    /// <exception cref="ArgumentException">The range is too narrow (see <see cref="PowerRange.IsWideEnough"/>).</exception>
    public static TelescopeInUse Of(Telescope telescope, PowerRange range, ImmutableArray<Interest> observes) =>
        new(telescope, range, new PowerAxis(range, telescope.ApertureMm, observes));
}
