using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Kits;
using Evenstep.Service.Targets;
using Evenstep.Service.Wording;

namespace Evenstep.Service.Assessments;

/// <summary>What a kit does.</summary>
internal sealed record AssessmentAnswer
{
    /// <summary>The catalogue named in the request, if any.</summary>
    public required CatalogueAnswer? Catalogue { get; init; }

    /// <summary>The kit's figures over all telescopes.</summary>
    public required FiguresAnswer Kit { get; init; }

    /// <summary>Each telescope, in the order of the request.</summary>
    public required IReadOnlyList<AssessedTelescopeAnswer> Telescopes { get; init; }

    /// <summary>Ids of owned items, each of which alone could be given away without the kit serving less.</summary>
    public required IReadOnlyList<string> Spare { get; init; }

    /// <summary>What had to fit into some view at once.</summary>
    public required IReadOnlyList<FramingAnswer> Demands { get; init; }

    /// <summary>What else is worth knowing.</summary>
    public required IReadOnlyList<RemarkAnswer> Notes { get; init; }

    /// <summary>Warnings; that of the Sun is always there.</summary>
    public required IReadOnlyList<RemarkAnswer> Cautions { get; init; }
}

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

internal static class AssessmentWriter
{
    public static AssessmentAnswer Write(AssessmentAsked asked, WorkBudget? budget = null)
    {
        var kit = Kit.Of(asked.Problem, []);
        return new AssessmentAnswer
        {
            Catalogue = asked.Catalogue is null ? null : KitWriter.CatalogueOf(asked.Catalogue),
            Kit = KitWriter.FiguresOf(kit.Figures),
            Telescopes = [.. kit.Ladders.Select(ladder => TelescopeOf(ladder, asked.Problem.EnoughMismatch, asked.Targets))],
            Spare = KitWriter.SpareOf(kit, budget),
            Demands = KitWriter.FramingsOf(kit),
            Notes = [.. KitRemarks.NotesOf(kit)],
            Cautions = KitRemarks.CautionsOf(kit),
        };
    }

    public static AssessedTelescopeAnswer TelescopeOf(Ladder ladder, double enoughMismatch, ImmutableArray<AskedTarget>? targets) => new()
    {
        Name = ladder.Telescope.Telescope.Name,
        PowerRange = KitWriter.RangeOf(ladder.Telescope),
        Resolution = KitWriter.ResolutionOf(ladder.Telescope),
        Ladder = KitWriter.LadderOf(ladder, enoughMismatch, targets),
    };
}
