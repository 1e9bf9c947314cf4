using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Http.Authentication;
using Evenstep.Service.Http.Logging;

namespace Evenstep.Service.Answering.Admission;

/// <summary>Lets a request for an answer of the service in or refuses it: before routes, logs and whatever else costs time.</summary>
internal sealed class AdmissionControl(Admissions admissions, KeyRing keys, WorkCharge charge, RefusalReport report, AdmissionMeter meter)
{
    public async Task AdmitAsync(HttpContext context, RequestDelegate next)
    {
        var key = keys.Asks && KeyCheck.TokenOf(context.Request) is { } token ? keys.Find(token) : null;
        if (key?.Rate is { WaitNeeded: { } wait } usedUp)
        {
            RateHeaders.Say(context.Response.Headers, usedUp);
            await RefuseAsync(context, next, new RefusedAdmission(RefusalReason.RateUsedUp, wait));
            return;
        }

        using var leases = new Leases();
        var caller = CallerName.Of(key, context.Connection.RemoteIpAddress);
        if (admissions.TryEnter(context, caller, leases) is { } reason)
        {
            await RefuseAsync(context, next, new RefusedAdmission(reason, null));
            return;
        }

        var claim = new SolveClaim(caller, SolvePriority.Single);
        SolveClaim.Current = claim;
        await next(context);
        charge.Take(key?.Rate, claim);
    }

    /// <summary>Pages of other origins may read the refusal only if it says so: for them it is answered further in, behind what says it.</summary>
    private Task RefuseAsync(HttpContext context, RequestDelegate next, RefusedAdmission refused)
    {
        report.Add(refused.Reason);
        meter.Refused(refused.Reason);
        if (context.Request.Headers.Origin.Count == 0)
        {
            return refused.AnswerAsync(context);
        }

        context.Features.Set(refused);
        context.Features.Set(SummedUp.Instance);
        return next(context);
    }
}

/// <summary>What marks a request that was refused on arrival.</summary>
/// <param name="Reason">Why.</param>
/// <param name="Wait">How long to wait; null for the usual time.</param>
internal sealed record RefusedAdmission(RefusalReason Reason, TimeSpan? Wait)
{
    public Task AnswerAsync(HttpContext context) => RefusalAnswer.Of(Reason).AnswerAsync(context, Wait);
}
