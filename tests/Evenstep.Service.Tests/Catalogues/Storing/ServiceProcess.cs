using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using Evenstep.Service.Http.Authentication;
using Evenstep.Service.Tests.Http.OpenApi;

namespace Evenstep.Service.Tests.Catalogues.Storing;

/// <summary>The service in a process of its own, which can be killed.</summary>
internal sealed class ServiceProcess : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly Process process;
    private readonly HttpClient client;
    private readonly ConcurrentQueue<string> said = new();
    private readonly long started = Stopwatch.GetTimestamp();

    private ServiceProcess(string dataFolder, int? mostFiles)
    {
        var address = string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{Port}");
        string[] command = ["dotnet", Path.Combine(AppContext.BaseDirectory, "Evenstep.Service.dll"), "--urls", address, $"--{StorageFolder.Key}", dataFolder];
        var start = new ProcessStartInfo(
            "sh", ["-c", mostFiles is { } most ? FormattableString.Invariant($"ulimit -n {most}; exec \"$@\"") : "exec \"$@\"", "sh", .. command])
        {
            WorkingDirectory = dataFolder,
            RedirectStandardOutput = true,
        };
        client = new HttpClient { BaseAddress = new Uri(address) };
        process = Process.Start(start)!;
        process.OutputDataReceived += (_, line) => said.Enqueue(line.Data ?? "");
        process.BeginOutputReadLine();
    }

    /// <summary>Where it listens.</summary>
    public int Port { get; } = FreePort.Find();

    /// <summary>The lines of its log so far.</summary>
    public IReadOnlyCollection<string> Said => said;

    public bool HasExited => process.HasExited;

    /// <summary>Starts the service and waits until it is ready.</summary>
    /// <param name="dataFolder">For what it stores.</param>
    /// <param name="mostFiles">How many files it may have open at once; null for as many as usual. On Unix only.</param>
    /// <returns>The service, and how long that took.</returns>
    public static async Task<(ServiceProcess Service, TimeSpan Took)> StartAsync(string dataFolder, int? mostFiles = null)
    {
        var service = new ServiceProcess(dataFolder, mostFiles);
        while (!await service.IsReadyAsync())
        {
            Assert.True(Stopwatch.GetElapsedTime(service.started) < Patience && !service.process.HasExited, string.Join('\n', service.said));
            await Task.Delay(Pause);
        }

        return (service, Stopwatch.GetElapsedTime(service.started));
    }

    /// <summary>The answer; null if the service is gone.</summary>
    public async Task<Answer?> SendAsync(HttpMethod method, string path, string? body = null, string contentType = "application/json")
    {
        try
        {
            using var request = new HttpRequestMessage(method, new Uri(path, UriKind.Relative));
            request.Content = body is null ? null : new StringContent(body, Encoding.UTF8, contentType);
            using var response = await client.SendAsync(request);
            DocumentGuard.Check(response);
            return await Answer.OfAsync(response);
        }
        catch (HttpRequestException)
        {
            return null;
        }
    }

    /// <summary>As kill -9 does it: the process has no say in it.</summary>
    public void Kill()
    {
        process.Kill();
        process.WaitForExit();
    }

    public void Dispose()
    {
        if (!process.HasExited)
        {
            Kill();
        }

        process.Dispose();
        client.Dispose();
    }

    private async Task<bool> IsReadyAsync() => (await SendAsync(HttpMethod.Get, "/health/ready"))?.Status == 200;
}
