using System.Collections.Immutable;
using Evenstep.Service.Contract.Problems;

namespace Evenstep.Service.Http.Endpoints;

/// <summary>Says which errors an endpoint answers, beside those that may come on the way to it.</summary>
internal sealed record MayRefuse(params ImmutableArray<ProblemKind> Kinds);

/// <summary>Marks endpoints with their errors.</summary>
internal static class MayRefuseOfRoutes
{
    public static RouteHandlerBuilder Refuses(this RouteHandlerBuilder route, params ImmutableArray<ProblemKind> kinds) =>
        route.WithMetadata(new MayRefuse(kinds));
}
