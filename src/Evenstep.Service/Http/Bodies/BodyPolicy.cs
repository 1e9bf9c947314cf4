using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.Net.Http.Headers;

namespace Evenstep.Service.Http.Bodies;

/// <summary>What bodies an endpoint takes. Among its metadata, it tells the server how much to let through.</summary>
/// <param name="MediaTypes">The types of body.</param>
/// <param name="MostMebibytes">How large one may be.</param>
/// <param name="Advice">What to do about one that is larger.</param>
internal sealed record BodyPolicy(ImmutableArray<string> MediaTypes, int MostMebibytes, string Advice) : IRequestSizeLimitMetadata
{
    private const int BytesOfMebibyte = 1024 * 1024;

    public int MostBytes => MostMebibytes * BytesOfMebibyte;

    public long? MaxRequestBodySize => MostBytes;

    /// <summary>What to send, as it reads after "send".</summary>
    public string Wanted =>
        $"{(MediaTypes.All(IsJson) ? "JSON" : "a body")} in UTF-8 as {string.Join(" or ", MediaTypes.Select(type => $"`Content-Type: {type}`"))}";

    public string TooLarge => string.Create(CultureInfo.InvariantCulture, $"A body may have at most {MostBytes} bytes ({MostMebibytes} MiB). {Advice}");

    /// <summary>Whether a body of this type is taken.</summary>
    public bool Takes(string? contentType) => TypeOf(contentType) is not null;

    /// <summary>Which of the types a body is of; null for none.</summary>
    public string? TypeOf(string? contentType) =>
        MediaTypeHeaderValue.TryParse(contentType, out var type) && (!type.Charset.HasValue || IsUtf8(type))
            ? MediaTypes.FirstOrDefault(one => type.MediaType.Equals(one, StringComparison.OrdinalIgnoreCase))
            : null;

    private static bool IsUtf8(MediaTypeHeaderValue type) => HeaderUtilities.RemoveQuotes(type.Charset).Equals("utf-8", StringComparison.OrdinalIgnoreCase);

    private static bool IsJson(string mediaType) => mediaType.EndsWith("json", StringComparison.Ordinal);
}
