using System.Globalization;
using Evenstep.Service.Contract.Headers;

namespace Evenstep.Service.Http.Authentication;

/// <summary>
/// Says how often a key may be used, and what is left, in the fields of draft-ietf-httpapi-ratelimit-headers-10. It is no
/// RFC yet: if it changes, this class does.
/// </summary>
internal static class RateHeaders
{
    private const string PolicyName = "key";
    private const int WindowSeconds = 60;

    /// <summary>The quota and its window: so many requests in so many seconds.</summary>
    public static string PolicyOf(int perMinute) => string.Create(CultureInfo.InvariantCulture, $"\"{PolicyName}\";q={perMinute};w={WindowSeconds}");

    /// <summary>What remains of the quota, and in how many seconds it is whole again.</summary>
    public static string LimitOf(int perMinute, int left)
    {
        var used = Math.Max(0, perMinute - left);
        var whole = (((long)used * WindowSeconds) + perMinute - 1) / perMinute;
        return string.Create(CultureInfo.InvariantCulture, $"\"{PolicyName}\";r={left};t={whole}");
    }

    public static void Say(IHeaderDictionary headers, KeyRate rate)
    {
        headers[AnswerHeader.RateLimitPolicy.Name] = PolicyOf(rate.PerMinute);
        headers[AnswerHeader.RateLimit.Name] = LimitOf(rate.PerMinute, rate.Left);
    }
}
