using Evenstep.Planning.Optics;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Answering.Targets;

/// <summary>A target of the caller's own as its JSON says it; null for what is missing or faulty.</summary>
internal sealed record TargetRequest
{
    public required string? Name { get; init; }

    public required double? WidthArcmin { get; init; }

    public required double? WantedExitPupilMm { get; init; }
}

/// <summary>The table of fields of a target.</summary>
internal static class TargetFields
{
    private const int MostTargets = 100;

    private static readonly Field<string?> Name = Make.Name("name", "What to call it.");

    private static readonly Field<double?> WidthArcmin = Make.Number(
        "widthArcmin", Bounds.TargetWidthArcmin, "arcminutes", "How wide it is, in arcminutes.");

    private static readonly Field<double?> WantedExitPupilMm = Make.Number(
        "wantedExitPupilMm", Bounds.WantedExitPupilMm, "mm", "The exit pupil that shows it best, in mm.");

    public static readonly Field<FlagOrList<TargetRequest>> Targets = Make.Of(
        "targets",
        new FlagOrListShape<TargetRequest>(
            new ObjectShape<TargetRequest>(
                "Target",
                "Something to look at.",
                [Name.Required(), WidthArcmin.Required(), WantedExitPupilMm.Required()],
                values => new TargetRequest
                {
                    Name = values.Of(Name),
                    WidthArcmin = values.Of(WidthArcmin),
                    WantedExitPupilMm = values.Of(WantedExitPupilMm),
                }),
            MostTargets),
        "Asks which view is for what: true for the targets that `/v1/targets` lists, or targets of your own.").Defaulting("false");
}
