using System.Net.Mime;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Http.Bodies;

/// <summary>Lets in a body of a known type and limited size, sent by somebody who accepts a form that the answer can take.</summary>
internal static class BodyReader
{
    /// <summary>What most requests are sent as.</summary>
    public static readonly BodyPolicy Json = new([MediaTypeNames.Application.Json], 2, "List fewer items, or name a stored catalogue.");

    /// <summary>The content coding that changes nothing.</summary>
    private const string AsItIs = "identity";

    public static Task<OpenedBody> OpenAsync(HttpRequest request, CancellationToken cancellationToken) => OpenAsync(request, Json, cancellationToken);

    public static async Task<OpenedBody> OpenAsync(HttpRequest request, BodyPolicy rule, CancellationToken cancellationToken) =>
        (await ReceiveAsync(request, rule, cancellationToken)).Open();

    public static Task<ReceivedBody> ReceiveAsync(HttpRequest request, CancellationToken cancellationToken) => ReceiveAsync(request, Json, cancellationToken);

    /// <summary>The body before it is parsed.</summary>
    public static async Task<ReceivedBody> ReceiveAsync(HttpRequest request, BodyPolicy rule, CancellationToken cancellationToken)
    {
        if (RefusalOfBody(request, rule) is { } refusal)
        {
            return ReceivedBody.Refused(refusal);
        }

        return await ReadAsync(request, rule, cancellationToken) is { } bytes
            ? new ReceivedBody(bytes, OfferedFormats.FormFor(request), null)
            : ReceivedBody.Refused(TooLarge(rule));
    }

    /// <summary>The answer to somebody who accepts no form that the answer can take; null for everybody else.</summary>
    public static ProblemResult? RefusalOfAccept(HttpRequest request)
    {
        var offered = OfferedFormats.Of(request.HttpContext);
        return offered.Forms.IsEmpty || offered.Choose(request.Headers.Accept) is not null
            ? null
            : new ProblemResult(ProblemKind.NotAcceptable, offered.RefusalOf(request.Headers.Accept));
    }

    /// <summary>The answer to a body of a type that is not taken; null for any other.</summary>
    public static ProblemResult? RefusalOfType(HttpRequest request, BodyPolicy rule) => rule.Takes(request.ContentType) ? null : new ProblemResult(
        ProblemKind.UnsupportedMediaType,
        $"{(request.ContentType is null ? "No Content-Type" : $"`Content-Type: {request.ContentType}`")} was given; send {rule.Wanted}.");

    /// <summary>The answer to a body that is packed, which for programs too names what is taken (RFC 9110, section 15.5.16); null for any other.</summary>
    public static ProblemResult? RefusalOfCoding(HttpRequest request)
    {
        var coding = request.Headers.ContentEncoding;
        if (coding.Count == 0 || string.Equals(coding, AsItIs, StringComparison.OrdinalIgnoreCase))
        {
            return null;
        }

        request.HttpContext.Response.Headers.AcceptEncoding = AsItIs;
        return new ProblemResult(ProblemKind.UnsupportedMediaType, ErrorMessage.Of("error/detail/encoding", ("coding", coding)));
    }

    public static ProblemResult TooLarge(BodyPolicy rule) => new(ProblemKind.TooLarge, rule.TooLarge);

    private static ProblemResult? RefusalOfBody(HttpRequest request, BodyPolicy rule) =>
        RefusalOfType(request, rule) ?? RefusalOfCoding(request) ?? (request.ContentLength > rule.MostBytes ? TooLarge(rule) : null);

    /// <summary>The bytes, or null for a body over the limit, whatever length it claimed.</summary>
    private static async Task<byte[]?> ReadAsync(HttpRequest request, BodyPolicy rule, CancellationToken cancellationToken)
    {
        // As long as it claims to be, which the admission has counted: what grows takes three times as much.
        using var bytes = new MemoryStream((int)(request.ContentLength ?? 0));
        while (true)
        {
            var read = await request.BodyReader.ReadAsync(cancellationToken);
            foreach (var segment in read.Buffer)
            {
                bytes.Write(segment.Span);
            }

            request.BodyReader.AdvanceTo(read.Buffer.End);
            if (read.IsCompleted || bytes.Length > rule.MostBytes)
            {
                return bytes.Length > rule.MostBytes ? null : bytes.Length == bytes.Capacity ? bytes.GetBuffer() : bytes.ToArray();
            }
        }
    }
}
