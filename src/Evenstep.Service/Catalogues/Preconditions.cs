using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Problems;
using Microsoft.Extensions.Primitives;
using Microsoft.Net.Http.Headers;

namespace Evenstep.Service.Catalogues;

/// <summary>What the sender of a change expects to be stored (RFC 9110, section 13).</summary>
internal sealed class Preconditions
{
    private readonly IList<EntityTagHeaderValue>? ifMatch;
    private readonly IList<EntityTagHeaderValue>? ifNoneMatch;

    private Preconditions(IList<EntityTagHeaderValue>? ifMatch, IList<EntityTagHeaderValue>? ifNoneMatch)
    {
        this.ifMatch = ifMatch;
        this.ifNoneMatch = ifNoneMatch;
    }

    /// <summary>The preconditions of a request, or the answer to one whose headers cannot be read: to ignore them would be to overwrite unseen.</summary>
    public static (Preconditions? Conditions, ProblemResult? Refusal) Of(HttpRequest request)
    {
        var headers = request.Headers;
        return !TryRead(headers.IfMatch, out var ifMatch) ? (null, Unreadable(HeaderNames.IfMatch, headers.IfMatch))
            : !TryRead(headers.IfNoneMatch, out var ifNoneMatch) ? (null, Unreadable(HeaderNames.IfNoneMatch, headers.IfNoneMatch))
            : (new Preconditions(ifMatch, ifNoneMatch), null);
    }

    /// <summary>The answer to a change that meets something else than it expects; null where it may go on.</summary>
    /// <param name="version">What is stored; null if nothing is.</param>
    public ProblemResult? RefusalFor(string? version) =>
        ifMatch is not null && !MatchesAnyForm(ifMatch, version) ? Failed("If-Match", ifMatch, version)
        : ifNoneMatch is not null && Matches(ifNoneMatch, version, strongly: false) ? Failed("If-None-Match", ifNoneMatch, version)
        : null;

    /// <summary>The answer to a question about something else than this version; null where it may be answered. Headers that cannot be read ask for
    /// nothing.</summary>
    public static ProblemResult? RefusalOfRead(HttpRequest request, string version) =>
        !TryRead(request.Headers.IfMatch, out var ifMatch) || ifMatch is null || Matches(ifMatch, version, strongly: true) ? null : new ProblemResult(
            ProblemKind.PreconditionFailed,
            $"`If-Match: {string.Join(", ", ifMatch)}` was given, but what there is has the entity tag {TagOf(version)}. Leave the header out to get it.");

    /// <summary>Whether whoever asks has this version already. Headers that cannot be read ask for nothing.</summary>
    public static bool IsKnown(HttpRequest request, string version) =>
        TryRead(request.Headers.IfNoneMatch, out var ifNoneMatch) && ifNoneMatch is not null && Matches(ifNoneMatch, version, strongly: false);

    public static EntityTagHeaderValue TagOf(string version) => new($"\"{version}\"");

    private static bool TryRead(StringValues header, out IList<EntityTagHeaderValue>? tags)
    {
        tags = null;
        return header.Count == 0 || EntityTagHeaderValue.TryParseStrictList(header, out tags);
    }

    /// <summary>Whoever has a version in whatever form has seen all that it holds.</summary>
    private static bool MatchesAnyForm(IList<EntityTagHeaderValue> tags, string? version) =>
        CatalogueForm.All.Any(form => Matches(tags, version is null ? null : version + form.TagEnding, strongly: true));

    private static bool Matches(IList<EntityTagHeaderValue> tags, string? version, bool strongly) =>
        version is not null && tags.Any(tag => tag.Equals(EntityTagHeaderValue.Any) || tag.Compare(TagOf(version), strongly));

    private static ProblemResult Unreadable(string header, StringValues value) => new(
        ProblemKind.InvalidRequest,
        $"`{header}: {value}` was given; it must be `*` or entity tags in quotation marks, as `ETag` gave them, such as `{header}: \"0123abcd\"`.");

    private static ProblemResult Failed(string header, IList<EntityTagHeaderValue> tags, string? version) => new(
        ProblemKind.PreconditionFailed,
        $"`{header}: {string.Join(", ", tags)}` was given, but " +
        $"{(version is null ? "no such catalogue is stored" : $"the version that is stored is {TagOf(version)}")}. Nothing was changed. Read what is stored, " +
        "and decide again.");
}
