using System.Collections.Immutable;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Targets;

namespace Evenstep.Service.Answering.Kits;

/// <summary>What the kit does in one telescope.</summary>
internal sealed record AssessedTelescopeAnswer
{
    /// <summary>As the request names it, or made up from its place.</summary>
    public required string Name { get; init; }

    /// <summary>The powers it can use.</summary>
    public required PowerRangeAnswer PowerRange { get; init; }

    /// <summary>The finest detail its aperture shows.</summary>
    public required ResolutionAnswer Resolution { get; init; }

    /// <summary>What it shows through the kit.</summary>
    public required LadderAnswer Ladder { get; init; }
}

internal static class AssessedTelescopeWriter
{
    public static AssessedTelescopeAnswer Write(Ladder ladder, Step enough, ImmutableArray<AskedTarget>? targets) => new()
    {
        Name = ladder.Telescope.Telescope.Name,
        PowerRange = KitWriter.RangeOf(ladder.Telescope),
        Resolution = KitWriter.ResolutionOf(ladder.Telescope),
        Ladder = KitWriter.LadderOf(ladder, enough, targets),
    };
}
