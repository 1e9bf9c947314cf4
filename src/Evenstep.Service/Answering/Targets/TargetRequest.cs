using Evenstep.Planning.Optics;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Answering.Targets;

/// <summary>A target of the caller's own as its JSON says it; null for what is missing or faulty.</summary>
[Schema("Target", "Something to look at.")]
internal sealed record TargetRequest
{
    public const int MostTargets = 100;

    [Text("What to call it.", IsRequired = true)] public string? Name { get; init; }
    [Number(nameof(Bounds.TargetWidthArcmin), "arcminutes", "How wide it is, in arcminutes.", IsRequired = true)] public double? WidthArcmin { get; init; }

    [Number(nameof(Bounds.WantedExitPupilMm), "mm", "The exit pupil that shows it best, in mm.", IsRequired = true)]
    public double? WantedExitPupilMm { get; init; }
}
