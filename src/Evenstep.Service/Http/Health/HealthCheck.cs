namespace Evenstep.Service.Http.Health;

/// <summary>
/// The service's own program, asking a service that runs on this machine whether it is ready: for containers, which have
/// no shell and no other program to ask with.
/// </summary>
internal static class HealthCheck
{
    /// <summary>The argument that asks for this in place of a service.</summary>
    public const string Argument = "--check";

    /// <summary>Where a service listens that is not told where.</summary>
    public const string UsualAddress = "http://localhost:5080";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    /// <summary>0 if the service is ready, 1 if it is not; in words too.</summary>
    /// <param name="args">What the service was started with, without the argument above; the environment counts too.</param>
    /// <param name="words">Takes the words.</param>
    public static async Task<int> RunAsync(string[] args, TextWriter words)
    {
        var address = AddressOf(new ConfigurationBuilder().AddEnvironmentVariables("ASPNETCORE_").AddCommandLine(args).Build());
        try
        {
            using var client = new HttpClient(new SocketsHttpHandler { UseProxy = false }) { BaseAddress = address, Timeout = Patience };
            using var response = await client.GetAsync(new Uri("/health/ready", UriKind.Relative));
            await words.WriteLineAsync(await response.Content.ReadAsStringAsync());
            return response.IsSuccessStatusCode ? 0 : 1;
        }
        catch (Exception exception) when (exception is HttpRequestException or TaskCanceledException)
        {
            await words.WriteLineAsync($"There is no answer from {address}: {exception.Message}");
            return 1;
        }
    }

    /// <summary>The address that a service with this configuration listens at.</summary>
    private static Uri AddressOf(IConfiguration configuration)
    {
        var ports = configuration["http_ports"]?.Split(';').Select(port => $"http://*:{port}");
        return OwnAddress.Among(configuration["urls"]?.Split(';') ?? ports ?? []) ?? new Uri(UsualAddress);
    }
}
