using Microsoft.AspNetCore.Cors.Infrastructure;
using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;

namespace Evenstep.Service.Http.Headers;

/// <summary>Which sites' pages may fetch, from a browser, the answers made for product pages and those that the elements show.</summary>
internal static class PageOrigins
{
    public const string Policy = "product-pages";
    public const string Key = "Evenstep:PageOrigins";

    /// <summary>The origins configured, such as `https://shop.example`, separated by spaces; `*` for any. None by default.</summary>
    /// <exception cref="InvalidOperationException">Something configured is no origin.</exception>
    public static void AddPageOrigins(this IServiceCollection services, IConfiguration configuration)
    {
        string[] origins = (configuration[Key] ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (origins.FirstOrDefault(origin => !IsOrigin(origin)) is { } wrong)
        {
            throw new InvalidOperationException($"{Key} must be origins such as https://shop.example, separated by spaces, or *; {wrong} is none.");
        }

        services.AddCors(cors => cors.AddPolicy(Policy, policy => policy
            .WithOrigins(origins)
            .WithMethods(HttpMethods.Get, HttpMethods.Post)
            .WithHeaders(HeaderNames.ContentType, HeaderNames.IfNoneMatch)
            .WithExposedHeaders(HeaderNames.ETag, HeaderNames.RetryAfter)));
    }

    /// <summary>Whether pages of other origins may fetch what a request is for.</summary>
    public static bool Admit(HttpContext context) =>
        context.GetEndpoint()?.Metadata.GetMetadata<IEnableCorsAttribute>() is { PolicyName: Policy }
        && context.RequestServices.GetRequiredService<IOptions<CorsOptions>>().Value.GetPolicy(Policy) is { Origins.Count: > 0 };

    private static bool IsOrigin(string text) =>
        text == "*" || (Uri.TryCreate(text, UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https" && uri.GetLeftPart(UriPartial.Authority) == text);
}
