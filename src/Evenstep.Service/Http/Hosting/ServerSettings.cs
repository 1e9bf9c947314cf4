using Evenstep.Service.Http.Bodies;
using Evenstep.Service.Http.Headers;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Evenstep.Service.Http.Hosting;

/// <summary>How long the server waits for a caller, and how much it reads of a request before it is handled.</summary>
/// <param name="HeaderTimeout">For the whole head of a request, from its first byte.</param>
/// <param name="KeepAliveTimeout">For the next request on a connection.</param>
/// <param name="LeastBodyBytesPerSecond">How fast a body must come, and an answer be taken, on average, after <see cref="GracePeriod"/>.</param>
internal sealed record ServerSettings(TimeSpan HeaderTimeout, TimeSpan KeepAliveTimeout, double LeastBodyBytesPerSecond)
{
    public const string HeaderSecondsKey = "Evenstep:HeaderSeconds";
    public const string KeepAliveSecondsKey = "Evenstep:KeepAliveSeconds";
    public const string LeastBytesKey = "Evenstep:LeastBytesPerSecond";

    /// <summary>A browser sends a head at once; ten seconds are enough for the slowest of networks.</summary>
    private const double DefaultHeaderSeconds = 10;

    /// <summary>Longer than a proxy keeps a connection (nginx: 60 s), so that it is never the service that closes one just as a request comes.</summary>
    private const double DefaultKeepAliveSeconds = 130;

    private const double DefaultLeastBytes = 240;
    private const double MostSeconds = 3600;
    private const double MostBytes = 1_000_000;

    /// <summary>Of a request's line; an address longer than <see cref="RequestSize.MostTargetCharacters"/> is refused in words.</summary>
    private const int MostBytesOfLine = 64 * 1024;

    /// <summary>Of all headers; more than <see cref="RequestSize.MostHeaderCharacters"/> are refused in words.</summary>
    private const int MostBytesOfHeaders = 128 * 1024;

    private const int MostHeaders = 500;

    /// <summary>How long a caller may be slower.</summary>
    public static readonly TimeSpan GracePeriod = TimeSpan.FromSeconds(5);

    /// <exception cref="InvalidOperationException">One of them makes no sense; the message says which are allowed.</exception>
    public static ServerSettings From(IConfiguration configuration) => new(
        TimeSpan.FromSeconds(Read(configuration, HeaderSecondsKey, DefaultHeaderSeconds, MostSeconds)),
        TimeSpan.FromSeconds(Read(configuration, KeepAliveSecondsKey, DefaultKeepAliveSeconds, MostSeconds)),
        Read(configuration, LeastBytesKey, DefaultLeastBytes, MostBytes));

    public void Apply(KestrelServerOptions server)
    {
        server.AddServerHeader = false;
        server.ConfigureEndpointDefaults(MalformedRequests.UseRefusalBodies);
        var rate = new MinDataRate(LeastBodyBytesPerSecond, GracePeriod);
        var limits = server.Limits;
        limits.MaxRequestBodySize = BodyReader.Json.MostBytes;
        limits.MaxRequestLineSize = MostBytesOfLine;
        limits.MaxRequestHeadersTotalSize = MostBytesOfHeaders;
        limits.MaxRequestHeaderCount = MostHeaders;
        limits.RequestHeadersTimeout = HeaderTimeout;
        limits.KeepAliveTimeout = KeepAliveTimeout;
        limits.MinRequestBodyDataRate = rate;
        limits.MinResponseDataRate = rate;
    }

    private static double Read(IConfiguration configuration, string key, double usual, double most)
    {
        var value = configuration.GetValue(key, usual);
        return value >= 1 && value <= most
            ? value
            : throw new InvalidOperationException(FormattableString.Invariant($"{key} must be a number from 1 to {most}."));
    }
}
