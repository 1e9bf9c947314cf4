using System.Buffers;
using System.Diagnostics;
using System.Globalization;
using System.IO.Pipelines;
using System.Text;
using System.Text.Json;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Errors;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Connections.Features;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;

using BadHttpRequestException = Microsoft.AspNetCore.Http.BadHttpRequestException;

namespace Evenstep.Service.Http.Hosting;

/// <summary>
/// Puts into words what the server refuses before any of this program is asked: what is no HTTP, an address or headers
/// beyond its own bounds, a head that does not come. It tells of that by a diagnostic event, when it has chosen the status
/// and not yet written it; what it writes then is replaced on the connection itself.
/// </summary>
internal static class MalformedRequests
{
    private const string Event = "Microsoft.AspNetCore.Server.Kestrel.BadRequest";

    /// <summary>Lets refusals be replaced on the connections of an endpoint; on an encrypted one there is nothing to be read, and they stay as they
    /// are.</summary>
    public static void UseRefusalBodies(this ListenOptions endpoint) => endpoint.Use(next => connection =>
    {
        var output = new RefusalWriter(connection.Transport.Output);
        connection.Transport = new Duplex(connection.Transport.Input, output);
        connection.Features.Set(output);
        return next(connection);
    });

    /// <summary>Begins to listen, for as long as the service runs.</summary>
    public static void UseMalformedRequests(this WebApplication app) =>
        _ = app.Services.GetRequiredService<DiagnosticListener>().Subscribe(new Observer(), (name, _, _) => name == Event);

    /// <summary>The server's own words are few, and cannot be had before it has put what was given into quotation marks; that is left out.</summary>
    private static ProblemResult ProblemOf(BadHttpRequestException refusal)
    {
        var problem = ErrorPages.ResultOf(refusal, null);
        return problem.Kind.Name != ProblemKind.InvalidRequest.Name
            ? problem
            : new ProblemResult(problem.Kind, $"This is no HTTP request that can be read (RFC 9112): {refusal.Message.Split(": '")[0].TrimEnd('.')}.");
    }

    private sealed class Observer : IObserver<KeyValuePair<string, object?>>
    {
        public void OnNext(KeyValuePair<string, object?> value)
        {
            if (value.Value is IFeatureCollection request
                && request.Get<IBadRequestExceptionFeature>()?.Error is BadHttpRequestException refusal
                && request.Get<IHttpResponseFeature>() is { HasStarted: false }
                && request.Get<RefusalWriter>() is { } output
                && request.Get<ITlsHandshakeFeature>() is null)
            {
                output.Refusal = ProblemOf(refusal);
            }
        }

        public void OnCompleted()
        {
        }

        public void OnError(Exception error)
        {
        }
    }

    private sealed record Duplex(PipeReader Input, PipeWriter Output) : IDuplexPipe;

    /// <summary>Writes what the server writes; but of a refusal only the first line, and then a problem document.</summary>
    private sealed class RefusalWriter(PipeWriter inner) : PipeWriter
    {
        private static ReadOnlySpan<byte> LineEnd => "\r\n"u8;

        private readonly ArrayBufferWriter<byte> held = new();

        /// <summary>What is to be said at the next flush; what is written until then is held.</summary>
        public ProblemResult? Refusal { get; set; }

        public override bool CanGetUnflushedBytes => inner.CanGetUnflushedBytes;

        public override long UnflushedBytes => inner.UnflushedBytes + held.WrittenCount;

        public override ValueTask<FlushResult> FlushAsync(CancellationToken cancellationToken = default)
        {
            if (Refusal is { } refusal && held.WrittenCount > 0)
            {
                Refusal = null;
                inner.Write(held.WrittenSpan.StartsWith("HTTP/1."u8) ? Answer(refusal) : held.WrittenSpan);
                held.Clear();
            }

            return inner.FlushAsync(cancellationToken);
        }

        public override void Advance(int bytes)
        {
            if (Refusal is null)
            {
                inner.Advance(bytes);
            }
            else
            {
                held.Advance(bytes);
            }
        }

        public override Memory<byte> GetMemory(int sizeHint = 0) => Refusal is null ? inner.GetMemory(sizeHint) : held.GetMemory(sizeHint);

        public override Span<byte> GetSpan(int sizeHint = 0) => Refusal is null ? inner.GetSpan(sizeHint) : held.GetSpan(sizeHint);

        public override void CancelPendingFlush() => inner.CancelPendingFlush();

        public override void Complete(Exception? exception = null) => inner.Complete(exception);

        public override ValueTask CompleteAsync(Exception? exception = null) => inner.CompleteAsync(exception);

        private byte[] Answer(ProblemResult refusal)
        {
            var body = JsonSerializer.SerializeToUtf8Bytes(refusal.Document(Language.English), ProblemJson.In(Language.English).ProblemDocument);
            var head = string.Create(
                CultureInfo.InvariantCulture,
                $"Content-Type: {ProblemResult.ContentType}\r\nContent-Length: {body.Length}\r\nContent-Language: en\r\nCache-Control: no-store\r\n" +
                $"X-Content-Type-Options: nosniff\r\nConnection: close\r\n\r\n");
            return [.. held.WrittenSpan[..(held.WrittenSpan.IndexOf(LineEnd) + LineEnd.Length)], .. Encoding.ASCII.GetBytes(head), .. body];
        }
    }
}
