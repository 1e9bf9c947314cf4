using Evenstep.Service.Contract.Headers;
using Microsoft.AspNetCore.Cors.Infrastructure;
using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;

namespace Evenstep.Service.Http.Authentication;

/// <summary>
/// Lets the pages of the origins of keys read answers in a browser. A browser asks beforehand without a key, so that all
/// origins of all keys are allowed alike; whether the key goes with the page is <see cref="KeyCheck"/>'s.
/// </summary>
internal sealed class KeyCorsPolicies(KeyRing keys, IOptions<CorsOptions> options) : ICorsPolicyProvider
{
    private static readonly string[] Methods = [HttpMethods.Get, HttpMethods.Post, HttpMethods.Put, HttpMethods.Patch, HttpMethods.Delete];

    private static readonly string[] Asked =
        [HeaderNames.Authorization, HeaderNames.ContentType, HeaderNames.AcceptLanguage, HeaderNames.IfMatch, HeaderNames.IfNoneMatch];

    private static readonly string[] Exposed =
        [HeaderNames.ETag, HeaderNames.RetryAfter, HeaderNames.WWWAuthenticate, AnswerHeader.RateLimitPolicy.Name, AnswerHeader.RateLimit.Name];

    /// <summary>The policy of an endpoint, with the origins of keys.</summary>
    public Task<CorsPolicy?> GetPolicyAsync(HttpContext context, string? policyName)
    {
        var named = policyName is null ? null : options.Value.GetPolicy(policyName);
        var origins = keys.Now.Origins;
        var policy = !KeySetup.IsGuarded(context.Request.Path) || origins.IsEmpty ? named
            : named is { AllowAnyOrigin: true } ? Build(named.Origins)
            : Build([.. named?.Origins ?? [], .. origins]);
        return Task.FromResult(policy);
    }

    private static CorsPolicy Build(IEnumerable<string> origins) =>
        new CorsPolicyBuilder([.. origins]).WithMethods(Methods).WithHeaders(Asked).WithExposedHeaders(Exposed).Build();
}
