using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Http.Authentication;
using Evenstep.Service.Http.Negotiation;

namespace Evenstep.Service.Answering.Admission;

/// <summary>Refuses on arrival, before anything is read or parsed, what could not be served soon.</summary>
internal static class AdmissionSetup
{
    private static readonly PathString Limited = "/v1";

    /// <param name="builder">Of the service.</param>
    /// <param name="batches">Where bodies are sent that are never held as a whole.</param>
    public static void AddAdmission(this WebApplicationBuilder builder, string batches)
    {
        var settings = AdmissionSettings.From(builder.Configuration);
        builder.Services.AddSingleton(settings);
        builder.Services.AddSingleton(WorkCharge.From(builder.Configuration));
        builder.Services.AddSingleton(services => new Admissions(
            settings, Limited + batches, services.GetRequiredService<AnswersBeingSent>(), services.GetRequiredService<SchedulerSettings>()));
        builder.Services.AddSingleton<AdmissionMeter>();
        builder.Services.AddSingleton<RefusalReport>();
        builder.Services.AddHostedService(provider => provider.GetRequiredService<RefusalReport>());
        builder.WebHost.ConfigureKestrel(server => server.Limits.MaxConcurrentConnections = settings.MostConnections);
    }

    /// <summary>Health, metrics, document and pages are always answered: they take next to nothing.</summary>
    public static void UseAdmission(this WebApplication app)
    {
        var control = new AdmissionControl(
            app.Services.GetRequiredService<Admissions>(),
            app.Services.GetRequiredService<KeyRing>(),
            app.Services.GetRequiredService<WorkCharge>(),
            app.Services.GetRequiredService<RefusalReport>(),
            app.Services.GetRequiredService<AdmissionMeter>());
        app.Use((context, next) => context.Request.Path.StartsWithSegments(Limited) ? control.AdmitAsync(context, next) : next(context));
    }

    /// <summary>Answers, behind what says which pages may read answers, those that were refused on arrival.</summary>
    public static void UseRefusals(this WebApplication app) => app.Use(
        (context, next) => context.Features.Get<RefusedAdmission>() is { } refused ? refused.AnswerAsync(context) : next(context));
}
