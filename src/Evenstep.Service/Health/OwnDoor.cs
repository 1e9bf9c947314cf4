using System.Net;
using System.Net.Mime;
using System.Text;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Evenstep.Service.Health;

/// <summary>
/// Sends the service one request from outside, for the way in by HTTP has code of its own to load. Where that is not possible
/// (no plain HTTP, or no network at all), the first caller waits some milliseconds longer: nothing worse.
/// </summary>
internal sealed partial class OwnDoor(IServer server, ILogger<OwnDoor> logger)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    public async Task KnockAsync(string path, string body, CancellationToken stopping)
    {
        if (Address() is not { } address)
        {
            return;
        }

        try
        {
            using var client = new HttpClient(new SocketsHttpHandler { UseProxy = false }) { BaseAddress = address, Timeout = Patience };
            using var content = new StringContent(body, Encoding.UTF8, MediaTypeNames.Application.Json);
            using var response = await client.PostAsync(new Uri(path, UriKind.Relative), content, stopping);
        }
        catch (Exception exception) when (exception is HttpRequestException or TaskCanceledException && !stopping.IsCancellationRequested)
        {
            LogNotReached(address, exception);
        }
    }

    /// <summary>The server of tests names an address too, but listens at none: somebody else may.</summary>
    private bool IsListening => server.GetType().Assembly == typeof(KestrelServerOptions).Assembly;

    private Uri? Address() => !IsListening ? null
        : (server.Features.Get<IServerAddressesFeature>()?.Addresses ?? [])
            .Select(BindingAddress.Parse)
            .Where(one => one.Scheme == Uri.UriSchemeHttp && one is { IsUnixPipe: false, IsNamedPipe: false })
            .Select(one => new UriBuilder(one.Scheme, HostOf(one), one.Port).Uri)
            .FirstOrDefault();

    /// <summary>A host to call: what listens everywhere is found at home.</summary>
    private static string HostOf(BindingAddress address) =>
        IPAddress.TryParse(address.Host, out var ip) && !ip.Equals(IPAddress.Any) && !ip.Equals(IPAddress.IPv6Any) ? address.Host : "localhost";

    [LoggerMessage(LogLevel.Debug, "The warm-up could not reach the service at {Address}.")]
    private partial void LogNotReached(Uri address, Exception exception);
}
