using Evenstep.Service.Contract.Fields;
using Microsoft.AspNetCore.Cors.Infrastructure;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace Evenstep.Service.Http.Authentication;

/// <summary>Keys: from where they are read, and what they guard.</summary>
internal static partial class KeySetup
{
    public const string OpenToKey = "Evenstep:OpenTo";

    private static readonly PathString[] Guarded = ["/v1", "/metrics"];

    /// <summary>Whether a path asks for a key. How the service is, its document and its pages are open to everybody.</summary>
    public static bool IsGuarded(PathString path) => Guarded.Any(one => path.StartsWithSegments(one));

    /// <summary>Reads the keys of the key file and of the rest of the configuration.</summary>
    /// <exception cref="InvalidOperationException">Some of it is faulty; the message names every fault.</exception>
    public static void AddKeys(this WebApplicationBuilder builder)
    {
        var source = new KeySource(KeyFile.PathOf(builder.Configuration), builder.Configuration);
        var content = source.Content();
        var atStart = source.Read(content);

        // A file of keys without any is what is left when the last one is revoked.
        builder.Services.AddSingleton(_ => new KeyRing(atStart, asks: content is not null));
        builder.Services.AddHostedService(
            provider => new KeyWatch(source, content, provider.GetRequiredService<KeyRing>(), provider.GetRequiredService<ILogger<KeyWatch>>()));
        builder.Services.AddSingleton(provider => new KeyCheck(provider.GetRequiredService<KeyRing>(), OpenToOf(builder.Configuration)));
        builder.Services.AddScoped<Caller>();
        builder.Services.RemoveAll<ICorsPolicyProvider>();
        builder.Services.AddSingleton<ICorsPolicyProvider, KeyCorsPolicies>();
    }

    /// <summary>Asks for keys, before anything else is done for a request; and says at start if none are asked for.</summary>
    public static void UseKeys(this WebApplication app)
    {
        var check = app.Services.GetRequiredService<KeyCheck>();
        app.Use(async (context, next) =>
        {
            var refusal = IsGuarded(context.Request.Path) ? check.RefusalOf(context, context.RequestServices.GetRequiredService<Caller>()) : null;
            await (refusal is null ? next(context) : refusal.ExecuteAsync(context));
        });
        var ring = app.Services.GetRequiredService<KeyRing>();
        if (ring.Asks)
        {
            LogKeys(app.Logger, ring.Now.Keys.Length);
        }
        else if (OpenToOf(app.Configuration) == OpenTo.Loopback)
        {
            LogLoopbackOnly(app.Logger, OpenToKey);
        }
        else
        {
            LogOpen(app.Logger);
        }
    }

    private static OpenTo OpenToOf(IConfiguration configuration) => configuration[OpenToKey] is not { Length: > 0 } word ? OpenTo.Loopback
        : Words<OpenTo>.Meant(word) ?? throw new InvalidOperationException(
            $"{OpenToKey} is {ErrorText.Quoted(word)}; it must be one of {ErrorText.List(Words<OpenTo>.All)}.");

    [LoggerMessage(LogLevel.Information, "Requests need one of {Count} keys. What changes in the file of keys counts within a second.")]
    private static partial void LogKeys(ILogger logger, int count);

    [LoggerMessage(
        LogLevel.Warning,
        "There are no keys: the service answers whoever asks from this machine, and nobody else. Make a key with `key new`, or set {Setting} to `everywhere`.")]
    private static partial void LogLoopbackOnly(ILogger logger, string setting);

    [LoggerMessage(LogLevel.Warning, "There are no keys, and the service is open to whoever can reach it.")]
    private static partial void LogOpen(ILogger logger);
}
