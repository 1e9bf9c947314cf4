using System.Text.Json;
using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Bodies;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>Understands a body, or says all that is wrong with it and returns null.</summary>
internal delegate T? ReadsBody<out T>(JsonElement body, Shelf shelf, Faults faults)
    where T : class;

/// <summary>Makes the answer to a request that is understood; it may outlive that request, for others may wait for it too.</summary>
internal delegate Task<FinishedAnswer> MakesAnswer<in T>(T asked, ReadOnlyMemory<byte> body, Manner manner, CancellationToken nobodyWaits);

/// <summary>The walk of every request for a plan: through the door, past the cache, to the reader and the desk.</summary>
internal sealed class PlanningWalk(Shelf shelf, AnswerCache cache)
{
    /// <typeparam name="TAsked">The request, understood.</typeparam>
    /// <typeparam name="TAnswer">The answer before it is written.</typeparam>
    public async Task<Results<AnswerResult<TAnswer>, ProblemResult>> AnswerAsync<TAsked, TAnswer>(
        HttpRequest request, string route, ReadsBody<TAsked> read, MakesAnswer<TAsked> make, CancellationToken gone)
        where TAsked : class
    {
        var received = await FrontDoor.ReceiveAsync(request, gone);
        if (received.Refusal is { } refusal)
        {
            return refusal;
        }

        var manner = new Manner(received.Form, request.LanguageAsked());
        var key = AnswerKey.Of(route, manner, shelf, received.Bytes.Span);
        if (await cache.FindAsync(key, gone) is { } kept)
        {
            return new AnswerResult<TAnswer>(kept, isNew: false);
        }

        var (asked, problem) = Understand(received.Bytes, read);
        if (asked is null)
        {
            return problem!;
        }

        var (answer, isNew) = await cache.GetOrMakeAsync(key, nobodyWaits => make(asked, received.Bytes, manner, nobodyWaits), gone);
        return new AnswerResult<TAnswer>(answer, isNew);
    }

    /// <summary>One of the two is null.</summary>
    private (T? Asked, ProblemResult? Problem) Understand<T>(ReadOnlyMemory<byte> bytes, ReadsBody<T> read)
        where T : class
    {
        using var body = StrictJson.Parse(bytes);
        if (body.Refusal is { } refusal)
        {
            return (null, refusal);
        }

        var faults = new Faults();
        var asked = read(body.Json, shelf, faults);
        return (asked, asked is null ? ProblemResult.Of(faults) : null);
    }
}
