using System.Text.Json;
using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Bodies;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>Understands a body, or says all that is wrong with it and returns null.</summary>
internal delegate T? ReadsBody<out T>(JsonElement body, CatalogueSnapshot snapshot, Faults faults)
    where T : class;

/// <summary>Makes the answer to a request that is understood; it may outlive that request, for others may wait for it too.</summary>
internal delegate Task<FinishedAnswer> MakesAnswer<in T>(T asked, ReadOnlyMemory<byte> body, Representation representation, CancellationToken nobodyWaits);

/// <summary>What every request for a plan does: its body is read, the answer looked for in the cache, or read, solved and written.</summary>
internal sealed class PlanningWalk(CatalogueSnapshot snapshot, AnswerCache cache, SolveGate gate)
{
    /// <summary>A larger body takes so long to understand that it must wait for its turn, as solves do.</summary>
    private const int MostBytesAtOnce = 32 * 1024;

    /// <typeparam name="TAsked">The request, understood.</typeparam>
    /// <typeparam name="TAnswer">The answer before it is written.</typeparam>
    public async Task<Results<AnswerResult<TAnswer>, ProblemResult>> AnswerAsync<TAsked, TAnswer>(
        HttpRequest request, string route, ReadsBody<TAsked> read, MakesAnswer<TAsked> make, CancellationToken cancellationToken)
        where TAsked : class
    {
        var received = await BodyReader.ReceiveAsync(request, cancellationToken);
        if (received.Refusal is { } refusal)
        {
            return refusal;
        }

        var representation = new Representation(received.Form, request.LanguageAsked());
        var key = AnswerKey.Of(route, representation, snapshot, received.Bytes.Span);
        if (await cache.FindAsync(key, cancellationToken) is { } kept)
        {
            return new AnswerResult<TAnswer>(kept, isNew: false);
        }

        var (asked, problem) = received.Bytes.Length <= MostBytesAtOnce
            ? Understand(received.Bytes, read)
            : await gate.RunAsync(_ => Understand(received.Bytes, read), cancellationToken);
        if (asked is null)
        {
            return problem!;
        }

        var (answer, isNew) = await cache.GetOrMakeAsync(key, nobodyWaits => make(asked, received.Bytes, representation, nobodyWaits), cancellationToken);
        return new AnswerResult<TAnswer>(answer, isNew);
    }

    /// <summary>One of the two is null.</summary>
    private (T? Asked, ProblemResult? Problem) Understand<T>(ReadOnlyMemory<byte> bytes, ReadsBody<T> read)
        where T : class
    {
        using var body = OpenedBody.Parse(bytes);
        if (body.Refusal is { } refusal)
        {
            return (null, refusal);
        }

        var faults = new Faults();
        var asked = read(body.Json, snapshot, faults);
        return (asked, asked is null ? ProblemResult.Of(faults) : null);
    }
}
