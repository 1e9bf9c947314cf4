using Serilog;

namespace Evenstep.Service;

/// <summary>Logs one line a request: what was asked, how it ended, how long it took and how much of that was solving.</summary>
internal static class RequestLog
{
    /// <summary>How the planning ended, or the kind of error.</summary>
    public const string Outcome = "Outcome";

    /// <summary>How long solving took, in milliseconds.</summary>
    public const string SolvingMs = "SolvingMs";

    private const string Line =
        $"{{RequestMethod}} {{RequestPath}} {{StatusCode}} in {{Elapsed:0.0}} ms, outcome {{{Outcome}:l}}, solving {{{SolvingMs}:0.0}} ms";

    public static void UseRequestLog(this WebApplication app)
    {
        app.UseSerilogRequestLogging(options => options.MessageTemplate = Line);
        app.Use((context, next) =>
        {
            var diagnostics = context.RequestServices.GetRequiredService<IDiagnosticContext>();
            diagnostics.Set(Outcome, "none");
            diagnostics.Set(SolvingMs, 0.0);
            return next(context);
        });
    }
}
