using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.Assessments;

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

    /// <summary>Ids of owned items that could all be given away at once without the kit serving less: of the largest such sets the one
    /// whose known prices add up to most. Null if the work limit came first.</summary>
    public required IReadOnlyList<string>? SpareTogether { get; init; }

    /// <summary>What had to fit into some view at once.</summary>
    public required IReadOnlyList<FramingAnswer> Demands { get; init; }

    /// <summary>What else is worth knowing.</summary>
    public required IReadOnlyList<RemarkAnswer> Notes { get; init; }

    /// <summary>Warnings; that of the Sun is always there.</summary>
    public required IReadOnlyList<RemarkAnswer> Cautions { get; init; }
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
            Telescopes = [.. kit.Ladders.Select(ladder => AssessedTelescopeWriter.Write(ladder, asked.Problem.EnoughStep, asked.Targets))],
            Spare = KitWriter.SpareOf(kit, budget),
            SpareTogether = KitWriter.SpareTogetherOf(kit, Spare.ShowingTelescopes(kit), budget),
            Demands = KitWriter.FramingsOf(kit),
            Notes = [.. KitRemarks.NotesOf(kit)],
            Cautions = KitRemarks.CautionsOf(kit),
        };
    }
}
