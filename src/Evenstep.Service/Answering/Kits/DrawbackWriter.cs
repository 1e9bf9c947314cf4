using System.Collections.Immutable;
using Evenstep.Planning.Optics;

namespace Evenstep.Service.Answering.Kits;

/// <summary>Writes what speaks against a view as a list.</summary>
internal static class DrawbackWriter
{
    /// <summary>Each drawback by its flag, in the order in which it is told.</summary>
    private static readonly ImmutableArray<(Drawbacks Flag, Drawback Word)> Words =
    [
        (Drawbacks.SteepCone, Drawback.SteepCone),
        (Drawbacks.TightEyeRelief, Drawback.TightEyeRelief),
        (Drawbacks.NarrowField, Drawback.NarrowField),
        (Drawbacks.WideExitPupil, Drawback.WideExitPupil),
    ];

    /// <summary>The list of each combination, for a kit may have thirty thousand views.</summary>
    private static readonly ImmutableArray<ImmutableArray<Drawback>> Lists =
        [.. Enumerable.Range(0, 1 << Words.Length).Select(flags => ListOf((Drawbacks)flags))];

    /// <summary>Empty for a view that nothing speaks against.</summary>
    public static IReadOnlyList<Drawback> Write(Drawbacks drawbacks) => Lists[(int)drawbacks];

    private static ImmutableArray<Drawback> ListOf(Drawbacks drawbacks) =>
        [.. Words.Where(one => drawbacks.HasFlag(one.Flag)).Select(one => one.Word)];
}
