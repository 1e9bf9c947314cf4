using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Negotiation;
using Microsoft.AspNetCore.Http.Metadata;

namespace Evenstep.Service.Http.OpenApi;

/// <summary>Tells which errors an endpoint may answer. Tests hold every answer against it.</summary>
internal static class Refusals
{
    /// <summary>What may come on the way to a handler, and when.</summary>
    private static readonly (ProblemKind Kind, Func<IReadOnlyList<object>, bool> MayCome)[] OnTheWay =
    [
        (ProblemKind.InvalidJson, metadata => BodyOf(metadata) is { IsLines: false }),
        (ProblemKind.InvalidRequest, IsBehindThreshold),
        (ProblemKind.Unauthorized, IsBehindThreshold),
        (ProblemKind.Forbidden, IsBehindThreshold),
        (ProblemKind.NotAcceptable, metadata => IsBehindThreshold(metadata) && OfferedFormats.Of(metadata).Forms.Length > 0),
        (ProblemKind.TooLarge, metadata => BodyOf(metadata) is not null && !IsEndless(metadata)),
        (ProblemKind.UnsupportedMediaType, metadata => BodyOf(metadata) is not null),
        (ProblemKind.RateUsedUp, IsBehindThreshold),
        (ProblemKind.ShareUsedUp, IsBehindThreshold),
        (ProblemKind.InternalError, IsBehindThreshold),
        (ProblemKind.Saturated, IsBehindThreshold),
    ];

    /// <summary>The kinds of errors that an endpoint with such metadata may answer, by status.</summary>
    public static IEnumerable<ProblemKind> Of(IReadOnlyList<object> metadata) => OnTheWay.Where(row => row.MayCome(metadata)).Select(row => row.Kind)
        .Concat(metadata.OfType<MayRefuse>().SelectMany(one => one.Kinds))
        .Distinct()
        .OrderBy(kind => kind.Status)
        .ThenBy(kind => ProblemKind.All.IndexOf(kind));

    private static bool IsBehindThreshold(IReadOnlyList<object> metadata) => metadata.OfType<RequestChecked>().Any();

    private static TakesBody? BodyOf(IReadOnlyList<object> metadata) => metadata.OfType<TakesBody>().LastOrDefault();

    private static bool IsEndless(IReadOnlyList<object> metadata) =>
        metadata.OfType<IRequestSizeLimitMetadata>().LastOrDefault() is { MaxRequestBodySize: null };
}
