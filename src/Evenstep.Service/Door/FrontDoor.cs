using System.Globalization;
using System.Net.Mime;
using Evenstep.Service.Errors;
using Microsoft.Net.Http.Headers;

namespace Evenstep.Service.Door;

/// <summary>Lets in a body that is JSON of limited size, sent by somebody who accepts a form that the answer can take.</summary>
internal static class FrontDoor
{
    public const int MostBytes = 2 * 1024 * 1024;

    public static async Task<OpenedBody> OpenAsync(HttpRequest request, CancellationToken gone)
    {
        var received = await ReceiveAsync(request, gone);
        return received.Refusal is { } refusal ? new OpenedBody(refusal) : StrictJson.Parse(received.Bytes);
    }

    /// <summary>The body before it is parsed.</summary>
    public static async Task<ReceivedBody> ReceiveAsync(HttpRequest request, CancellationToken gone)
    {
        if (OfferedForms.Of(request.HttpContext).Choose(request.Headers.Accept) is not { } form)
        {
            return ReceivedBody.Refused(NotAcceptable(request));
        }

        if (RefusalOfHeaders(request) is { } refusal)
        {
            return ReceivedBody.Refused(refusal);
        }

        return await ReadAsync(request, gone) is { } bytes ? new ReceivedBody(bytes, form, null) : ReceivedBody.Refused(TooLarge());
    }

    private static ProblemResult NotAcceptable(HttpRequest request) =>
        new(ProblemKind.NotAcceptable, OfferedForms.Of(request.HttpContext).RefusalOf(request.Headers.Accept));

    private static ProblemResult? RefusalOfHeaders(HttpRequest request) =>
        !IsJson(request.ContentType) ? new ProblemResult(
            ProblemKind.UnsupportedMediaType,
            $"{(request.ContentType is null ? "No Content-Type" : $"`Content-Type: {request.ContentType}`")} was given; send JSON in UTF-8 as `Content-Type: {MediaTypeNames.Application.Json}`.")
        : request.ContentLength > MostBytes ? TooLarge()
        : null;

    private static bool IsJson(string? contentType) =>
        MediaTypeHeaderValue.TryParse(contentType, out var type)
        && type.MediaType.Equals(MediaTypeNames.Application.Json, StringComparison.OrdinalIgnoreCase)
        && (!type.Charset.HasValue || HeaderUtilities.RemoveQuotes(type.Charset).Equals("utf-8", StringComparison.OrdinalIgnoreCase));

    /// <summary>The bytes, or null for a body over the limit, whatever length it claimed.</summary>
    private static async Task<byte[]?> ReadAsync(HttpRequest request, CancellationToken gone)
    {
        using var bytes = new MemoryStream();
        while (true)
        {
            var read = await request.BodyReader.ReadAsync(gone);
            foreach (var segment in read.Buffer)
            {
                bytes.Write(segment.Span);
            }

            request.BodyReader.AdvanceTo(read.Buffer.End);
            if (read.IsCompleted || bytes.Length > MostBytes)
            {
                return bytes.Length <= MostBytes ? bytes.ToArray() : null;
            }
        }
    }

    public static ProblemResult TooLarge() => new(
        ProblemKind.TooLarge, string.Create(CultureInfo.InvariantCulture, $"A body may have at most {MostBytes} bytes (2 MiB). List fewer items, or name a stored catalogue."));
}
