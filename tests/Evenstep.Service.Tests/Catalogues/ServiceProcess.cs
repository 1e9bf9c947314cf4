using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using Evenstep.Service.Catalogues.Storing;

namespace Evenstep.Service.Tests.Catalogues;

/// <summary>The service in a process of its own, which can be killed.</summary>
internal sealed class ServiceProcess : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly Process process;
    private readonly HttpClient client;
    private readonly ConcurrentQueue<string> said = new();
    private readonly long started = Stopwatch.GetTimestamp();

    private ServiceProcess(string dataFolder)
    {
        var address = string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{FreePort.Find()}");
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "Evenstep.Service.dll"), "--urls", address, $"--{StorageSetup.FolderKey}", dataFolder])
        {
            WorkingDirectory = dataFolder,
            RedirectStandardOutput = true,
        };
        client = new HttpClient { BaseAddress = new Uri(address) };
        process = Process.Start(start)!;
        process.OutputDataReceived += (_, line) => said.Enqueue(line.Data ?? "");
        process.BeginOutputReadLine();
    }

    /// <summary>Starts the service and waits until it is ready.</summary>
    /// <returns>The service, and how long that took.</returns>
    public static async Task<(ServiceProcess Service, TimeSpan Took)> StartAsync(string dataFolder)
    {
        var service = new ServiceProcess(dataFolder);
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
