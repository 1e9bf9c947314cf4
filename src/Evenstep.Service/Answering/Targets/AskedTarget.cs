using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Answering.Targets;

/// <summary>A target for which a view is wanted.</summary>
/// <param name="Target">The target.</param>
/// <param name="Known">The one of our list that it is; null for one of the caller's own.</param>
internal sealed record AskedTarget(Target Target, KnownTarget? Known)
{
    private static readonly ImmutableArray<AskedTarget> AllKnown = [.. KnownTarget.All.Select(known => new AskedTarget(known.Target, known))];

    /// <summary>The targets asked for, in order; null if none were asked for.</summary>
    public static ImmutableArray<AskedTarget>? Of(FlagOrList<TargetRequest>? request) => request switch
    {
        { Flag: true } => AllKnown,
        { List: { } list } => [.. list.OfType<TargetRequest>().Select(OwnTarget).OfType<AskedTarget>()],
        _ => null,
    };

    private static AskedTarget? OwnTarget(TargetRequest request) =>
        request is { Name: { } name, WidthArcmin: { } width, WantedExitPupilMm: { } exitPupil }
            ? new AskedTarget(new Target(name, width, exitPupil), Known: null)
            : null;
}
