using Evenstep.Service.Answering.Targets;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.Features.Targets;

/// <summary>What there is to look at.</summary>
internal static class TargetRoutes
{
    private static readonly KnownTargetsAnswer Known = TargetWriter.WriteKnown();

    public static void MapTargets(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/targets", ListTargets)
            .WithName("list-targets")
            .WithTags("Targets");

    /// <summary>Lists the targets that `explain.targets` stands for, with their widths, wanted exit pupils and sources.</summary>
    /// <response code="200">The targets.</response>
    public static Results<SpokenResult<KnownTargetsAnswer>, ProblemResult> ListTargets() =>
        new SpokenResult<KnownTargetsAnswer>(Known, language => TargetJson.In(language).KnownTargetsAnswer);
}
