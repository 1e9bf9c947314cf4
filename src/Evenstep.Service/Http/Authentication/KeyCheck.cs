using System.Net;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Problems;
using Microsoft.Net.Http.Headers;

namespace Evenstep.Service.Http.Authentication;

/// <summary>Lets in who has a key that allows what is asked; where no keys are configured, who is on the same machine.</summary>
internal sealed class KeyCheck(KeyRing keys, OpenTo openTo)
{
    private const string Scheme = "Bearer";

    /// <summary>The refusal of a request; null for one that may go on.</summary>
    public ProblemResult? RefusalOf(HttpContext context, Caller caller) => keys.Asks
        ? RefusalByKey(context, caller)
        : openTo == OpenTo.Everywhere ? null : RefusalOfStranger(context.Connection.RemoteIpAddress) ?? RefusalOfName(context.Request.Host);

    /// <summary>What becomes of the lines of a batch whose key is revoked meanwhile.</summary>
    public static ProblemResult LockedOut() => new(
        ProblemKind.Unauthorized, "The key that this batch came with has been revoked, or may no longer `read`; ask whoever runs the service for another.");

    private static ProblemResult? RefusalOfStranger(IPAddress? address) => IsLocal(address) ? null : new ProblemResult(
        ProblemKind.Forbidden,
        "This service has no keys, and so answers only callers on its own machine. Whoever runs it can make keys with `key new`, or open it to everybody: " +
        "set `" + KeySetup.OpenToKey + "` to `everywhere`.");

    /// <summary>
    /// A page of another site can have its own name lead to this machine, and then ask from the browser of whoever looks at
    /// it (DNS rebinding). Its requests still say that name.
    /// </summary>
    private static ProblemResult? RefusalOfName(HostString host) => IsLocalName(host.Host) ? null : new ProblemResult(
        ProblemKind.Forbidden,
        "This service has no keys, and so answers only to a name of its own machine: `localhost`, or an address such as `127.0.0.1` or `[::1]`. " +
        $"{(host.HasValue ? $"The request's `Host` is {ErrorText.Quoted(host.Value)}." : "The request has no `Host`.")} "
        + $"Whoever runs the service can make keys with `key new`, or set `{KeySetup.OpenToKey}` to `everywhere`.");

    private static bool IsLocalName(string name) =>
        name.Equals("localhost", StringComparison.OrdinalIgnoreCase) || (IPAddress.TryParse(name, out var address) && IsLocal(address));

    /// <summary>Callers within the process, or by a socket of the file system, have no address.</summary>
    private static bool IsLocal(IPAddress? address) => address is null || IPAddress.IsLoopback(address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address);

    private ProblemResult? RefusalByKey(HttpContext context, Caller caller)
    {
        context.Response.Headers.Append(HeaderNames.Vary, HeaderNames.Authorization);
        if (TokenOf(context.Request) is not { } token)
        {
            return Unauthorized(context, Scheme, ErrorMessage.Of("error/detail/no-key"));
        }

        if (keys.Find(token) is not { } key)
        {
            return Unauthorized(context, $"{Scheme} error=\"invalid_token\"", ErrorMessage.Of("error/detail/unknown-key"));
        }

        caller.Key = key;
        return RefusalOfUse(context, key);
    }

    private static ProblemResult? RefusalOfUse(HttpContext context, ApiKey key)
    {
        if (!key.IsFor(context.Request.Headers.Origin))
        {
            return Forbidden(
                context, Scheme,
                $"This key is for pages of {ErrorText.List(key.Origins)} only, and the request does not say that it comes from one: " +
                $"its `Origin` is {OriginOf(context)}.");
        }

        var needed = ScopeOf(context.Request.Method);
        if (!key.Allows(needed))
        {
            var word = Words<Scope>.Of(needed);
            return Forbidden(
                context, $"{Scheme} error=\"insufficient_scope\", scope=\"{word}\"",
                ErrorMessage.Of(
                    "error/detail/key-scope", ("scopes", ErrorText.List(key.Scopes.Select(Words<Scope>.Of))), ("method", context.Request.Method),
                    ("needed", word)));
        }

        var wait = key.Rate?.Use();
        SayRate(context, key);
        return wait is null ? null : new ProblemResult(
            ProblemKind.RateUsedUp, ErrorMessage.Of("error/detail/key-used-up", ("perMinute", key.Rate!.PerMinute)))
        {
            RetryAfter = wait,
        };
    }

    private static string OriginOf(HttpContext context) =>
        context.Request.Headers.Origin is [{ Length: > 0 } origin, ..] ? ErrorText.Quoted(origin) : "missing";

    /// <summary>When the answer starts, for the error pages clear the headers of what they replace.</summary>
    private static void SayRate(HttpContext context, ApiKey key)
    {
        if (key.Rate is { } rate)
        {
            context.Response.OnStarting(() =>
            {
                RateHeaders.Say(context.Response.Headers, rate);
                return Task.CompletedTask;
            });
        }
    }

    private static ProblemResult Unauthorized(HttpContext context, string challenge, ErrorMessage detail)
    {
        context.Response.Headers.WWWAuthenticate = challenge;
        return new ProblemResult(ProblemKind.Unauthorized, detail);
    }

    private static ProblemResult Forbidden(HttpContext context, string challenge, ErrorMessage detail)
    {
        context.Response.Headers.WWWAuthenticate = challenge;
        return new ProblemResult(ProblemKind.Forbidden, detail);
    }

    /// <summary>The key that a request was sent with; null for none.</summary>
    public static string? TokenOf(HttpRequest request) =>
        request.Headers.Authorization is [{ } given] && given.StartsWith($"{Scheme} ", StringComparison.OrdinalIgnoreCase)
            && given[(Scheme.Length + 1)..].Trim() is { Length: > 0 } token
            ? token
            : null;

    /// <summary>Only what changes catalogues is more than reading: to POST a question changes nothing.</summary>
    private static Scope ScopeOf(string method) =>
        HttpMethods.IsPut(method) || HttpMethods.IsPatch(method) || HttpMethods.IsDelete(method) ? Scope.Write : Scope.Read;
}
