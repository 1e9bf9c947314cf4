using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;
using Microsoft.Net.Http.Headers;

namespace Evenstep.Service.Contract.Headers;

/// <summary>A header of requests that an endpoint honours; as metadata of the endpoint it tells the OpenAPI document.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Meaning">What it does.</param>
internal sealed record RequestHeader(string Name, string Meaning)
{
    public static readonly RequestHeader AcceptLanguage = new(
        HeaderNames.AcceptLanguage,
        $"The language of the sentences: {ErrorText.List(Language.All.Select(language => language.Tag))}; `Content-Language` says which it is.");

    /// <summary>Of a change.</summary>
    public static readonly RequestHeader IfMatch = new(
        HeaderNames.IfMatch, "Entity tags of the catalogue: it is changed only if the version stored has one of them; `*` stands for any version.");

    /// <summary>Of a change.</summary>
    public static readonly RequestHeader IfNoneMatch = new(
        HeaderNames.IfNoneMatch,
        "Entity tags of the catalogue: it is changed only if the version stored has none of them; with `*` only if nothing is stored.");

    /// <summary>Of a question.</summary>
    public static readonly RequestHeader IfMatchOfRead = new(HeaderNames.IfMatch, "Entity tags: answered only if what there is has one of them.");

    /// <summary>Of a question.</summary>
    public static readonly RequestHeader IfNoneMatchOfRead =
        new(HeaderNames.IfNoneMatch, "Entity tags of what one has: if it is still the same, the answer is 304 and has no body.");
}
