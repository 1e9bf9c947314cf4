using System.Net.Mime;
using System.Text;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Evenstep.Service.Http.Health;

/// <summary>
/// Sends the service one request from outside, for the way in by HTTP has code of its own to load. Where that is not possible
/// (no plain HTTP, or no network at all), the first caller waits some milliseconds longer: nothing worse.
/// </summary>
internal sealed partial class SelfRequest(IServer server, ILogger<SelfRequest> logger)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    public async Task SendAsync(string path, string body, CancellationToken stopping)
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

    private Uri? Address() => IsListening ? OwnAddress.Among(server.Features.Get<IServerAddressesFeature>()?.Addresses ?? []) : null;

    [LoggerMessage(LogLevel.Debug, "The warm-up could not reach the service at {Address}.")]
    private partial void LogNotReached(Uri address, Exception exception);
}
