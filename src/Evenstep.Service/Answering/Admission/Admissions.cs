using System.Threading.RateLimiting;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Catalogues;
using Evenstep.Service.Http.Bodies;
using Evenstep.Service.Http.Negotiation;
using Microsoft.AspNetCore.Http.Features;

namespace Evenstep.Service.Answering.Admission;

/// <summary>Lets requests in while there is room for them, by what their headers say: their bodies have not been read yet.</summary>
internal sealed class Admissions : IDisposable
{
    private const int BytesPerPermit = 1024;
    private const int PermitsPerMebibyte = 1024;

    private readonly SharedLimit requests;
    private readonly SharedLimit batches;
    private readonly ConcurrencyLimiter bodies;
    private readonly int mostBodyPermits;
    private readonly PathString streamed;
    private readonly AnswersBeingSent answers;
    private readonly long mostBytesOfAnswers;

    /// <param name="settings">How much may be under way.</param>
    /// <param name="streamed">Where bodies are sent that are never held as a whole.</param>
    /// <param name="answers">Those that are being sent.</param>
    /// <param name="memory">What they may hold.</param>
    public Admissions(AdmissionSettings settings, PathString streamed, AnswersBeingSent answers, SchedulerSettings memory)
    {
        this.streamed = streamed;
        this.answers = answers;
        mostBytesOfAnswers = memory.MostBytesOfAnswers;
        requests = new SharedLimit(settings.MostRequests, settings.CallerShare);
        batches = new SharedLimit(settings.MostBatches, settings.CallerShare);
        mostBodyPermits = settings.BodyMebibytes * PermitsPerMebibyte;
        bodies = new ConcurrencyLimiter(new ConcurrencyLimiterOptions { PermitLimit = mostBodyPermits, QueueLimit = 0 });
    }

    /// <summary>How many requests are under way, batches included.</summary>
    public int InFlight => requests.InUse + batches.InUse;

    /// <summary>Bytes of bodies that are being received or are in use.</summary>
    public long BodyBytes => BytesPerPermit * (mostBodyPermits - (bodies.GetStatistics()?.CurrentAvailablePermits ?? mostBodyPermits));

    /// <summary>Lets a request in.</summary>
    /// <param name="context">The request.</param>
    /// <param name="caller">Who sends it.</param>
    /// <param name="leases">Takes what must be given back when it is over.</param>
    /// <returns>Null, or why it is not let in.</returns>
    public RefusalReason? TryEnter(HttpContext context, string caller, Leases leases)
    {
        if (context.Request.Path.StartsWithSegments(streamed))
        {
            // Its body is never held as a whole.
            return batches.TryEnter(caller, leases);
        }

        return answers.Bytes >= mostBytesOfAnswers ? RefusalReason.Saturated : requests.TryEnter(caller, leases)
            ?? (leases.TryAdd(bodies.AttemptAcquire(BodyPermitsOf(context.Request))) ? null : RefusalReason.Saturated);
    }

    public void Dispose()
    {
        requests.Dispose();
        batches.Dispose();
        bodies.Dispose();
    }

    /// <summary>As much as it says that it sends; or, where it does not say, may send. More than is allowed is refused later on.</summary>
    private int BodyPermitsOf(HttpRequest request)
    {
        if (request.ContentLength is null or 0 && !HasBodyOfUnknownLength(request))
        {
            return 0;
        }

        // What is stored may be larger than what is asked.
        var most = (long)(HttpMethods.IsPost(request.Method) ? BodyReader.Json : CatalogueBody.Rule).MostBytes;
        var bytes = Math.Min(request.ContentLength ?? most, most);
        return (int)Math.Min(mostBodyPermits, (bytes + BytesPerPermit - 1) / BytesPerPermit);
    }

    private static bool HasBodyOfUnknownLength(HttpRequest request) =>
        request.ContentLength is null && request.HttpContext.Features.Get<IHttpRequestBodyDetectionFeature>()?.CanHaveBody == true;
}
