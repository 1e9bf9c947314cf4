using Serilog;
using Serilog.Events;

namespace Evenstep.Service.Http.Logging;

/// <summary>Logs one line a request: what was asked, how it ended, how long it took and how much of that was solving.</summary>
internal static class RequestLog
{
    /// <summary>How the planning ended, or the kind of error.</summary>
    public const string Outcome = "Outcome";

    /// <summary>How long solving took, in milliseconds.</summary>
    public const string SolvingMs = "SolvingMs";

    private const int LongestPath = 300;

    private const string Line =
        $"{{RequestMethod}} {{RequestPath}} {{StatusCode}} in {{Elapsed:0.0}} ms, outcome {{{Outcome}:l}}, solving {{{SolvingMs}:0.0}} ms";

    public static void UseRequestLog(this WebApplication app)
    {
        app.UseSerilogRequestLogging(options =>
        {
            options.MessageTemplate = Line;
            options.GetLevel = LevelOf;
            options.GetMessageTemplateProperties = PropertiesOf;
        });
        app.Use((context, next) =>
        {
            var diagnostics = context.RequestServices.GetRequiredService<IDiagnosticContext>();
            diagnostics.Set(Outcome, "none");
            diagnostics.Set(SolvingMs, 0.0);
            return next(context);
        });
    }

    private static LogEventLevel LevelOf(HttpContext context, double elapsedMs, Exception? exception) =>
        context.Features.Get<SummedUp>() is not null ? LogEventLevel.Verbose
        : exception is not null || context.Response.StatusCode >= StatusCodes.Status500InternalServerError ? LogEventLevel.Error
        : LogEventLevel.Information;

    /// <summary>A caller may send an address of many thousand characters; its beginning tells enough.</summary>
    private static IEnumerable<LogEventProperty> PropertiesOf(HttpContext context, string path, double milliseconds, int status) =>
    [
        new("RequestMethod", new ScalarValue(context.Request.Method)),
        new("RequestPath", new ScalarValue(path.Length <= LongestPath ? path : $"{path[..LongestPath]}…")),
        new("StatusCode", new ScalarValue(status)),
        new("Elapsed", new ScalarValue(milliseconds)),
    ];
}
