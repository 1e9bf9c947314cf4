using Evenstep.Service.Keys;
using Evenstep.Service.Metrics;
using Evenstep.Service.Scheduling;

namespace Evenstep.Service.Admission;

/// <summary>Refuses at the door, before anything is read or parsed, what could not be served soon.</summary>
internal static class AdmissionSetup
{
    private static readonly PathString Limited = "/v1";

    public static void AddAdmission(this WebApplicationBuilder builder)
    {
        var settings = AdmissionSettings.From(builder.Configuration);
        builder.Services.AddSingleton(settings);
        builder.Services.AddSingleton(WorkCharge.From(builder.Configuration));
        builder.Services.AddSingleton<Admissions>();
        builder.Services.AddSingleton<RefusalReport>();
        builder.Services.AddHostedService(provider => provider.GetRequiredService<RefusalReport>());
        builder.WebHost.ConfigureKestrel(server => server.Limits.MaxConcurrentConnections = settings.MostConnections);
    }

    /// <summary>Health, metrics, document and pages are always answered: they take next to nothing.</summary>
    public static void UseAdmission(this WebApplication app)
    {
        var door = new AdmissionDoor(
            app.Services.GetRequiredService<Admissions>(),
            app.Services.GetRequiredService<KeyRing>(),
            app.Services.GetRequiredService<WorkCharge>(),
            app.Services.GetRequiredService<RefusalReport>(),
            app.Services.GetRequiredService<ServiceMeter>());
        app.Use((context, next) => context.Request.Path.StartsWithSegments(Limited) ? door.PassAsync(context, next) : next(context));
    }
}

/// <summary>Where every request for an answer of the service passes, or does not.</summary>
internal sealed class AdmissionDoor(Admissions admissions, KeyRing keys, WorkCharge charge, RefusalReport report, ServiceMeter meter)
{
    public async Task PassAsync(HttpContext context, RequestDelegate next)
    {
        var key = keys.Asks && KeyCheck.TokenOf(context.Request) is { } token ? keys.Find(token) : null;
        if (key?.Rate is { WaitNeeded: { } wait } usedUp)
        {
            RateHeaders.Say(context.Response.Headers, usedUp);
            await RefuseAsync(context, RefusalReason.RateUsedUp, wait);
            return;
        }

        using var leases = new Leases();
        var caller = CallerName.Of(key, context.Connection.RemoteIpAddress);
        if (admissions.TryEnter(context, caller, leases) is { } reason)
        {
            await RefuseAsync(context, reason, null);
            return;
        }

        var claim = new SolveClaim(caller, SolvePriority.Single);
        SolveClaim.Current = claim;
        await next(context);
        charge.Take(key?.Rate, claim);
    }

    private Task RefuseAsync(HttpContext context, RefusalReason reason, TimeSpan? wait)
    {
        report.Add(reason);
        meter.Refused(reason);
        context.Features.Set(RefusedAtDoor.It);
        return RefusalAnswer.Of(reason).AnswerAsync(context, wait);
    }
}

/// <summary>Marks a request that was refused at the door: it gets no line in the log.</summary>
internal sealed record RefusedAtDoor
{
    public static readonly RefusedAtDoor It = new();
}
