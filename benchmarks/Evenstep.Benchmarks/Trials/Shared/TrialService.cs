using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace Evenstep.Benchmarks.Trials;

/// <summary>How a service under trial is started.</summary>
internal sealed record TrialStart
{
    /// <summary>The service's assembly, built or published.</summary>
    public required string Assembly { get; init; }

    /// <summary>Settings of the service, such as <c>Evenstep:CertifyShare</c>.</summary>
    public IReadOnlyList<(string Key, string Value)> Settings { get; init; } = [];

    /// <summary>Variables of the process, such as <c>DOTNET_PROCESSOR_COUNT</c>.</summary>
    public IReadOnlyList<(string Key, string Value)> Environment { get; init; } = [];

    /// <summary>The one processor core that it may use; null for all.</summary>
    public int? Core { get; init; }

    /// <summary>What answers 200 once the service is taken into use.</summary>
    public string ReadyPath { get; init; } = "/health/ready";

    /// <summary>Where it keeps its data; null for a folder of its own, deleted afterwards.</summary>
    public string? DataFolder { get; init; }
}

/// <summary>
/// The service in a process of its own, spoken to over HTTP on the loopback address and watched through <c>/proc</c>.
/// </summary>
internal sealed class TrialService : IDisposable
{
    private const int KeptLines = 200;

    private static readonly TimeSpan StartsWithin = TimeSpan.FromSeconds(60);

    private readonly Process process;
    private readonly string folder;
    private readonly bool deletesFolder;
    private readonly ConcurrentQueue<string> said = new();

    private TrialService(TrialStart start)
    {
        deletesFolder = start.DataFolder is null;
        folder = start.DataFolder ?? Directory.CreateTempSubdirectory("evenstep-trial-").FullName;
        Address = new Uri(string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{FreePort()}"));
        string[] command = ["dotnet", start.Assembly, "--urls", Address.ToString(), "--Evenstep:DataFolder", folder, .. Arguments(start)];
        command = start.Core is { } core ? ["taskset", "-c", core.ToString(CultureInfo.InvariantCulture), .. command] : command;
        var info = new ProcessStartInfo(command[0], command[1..])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (key, value) in start.Environment)
        {
            info.Environment[key] = value;
        }

        process = Process.Start(info) ?? throw new InvalidOperationException($"{command[0]} did not start.");
        process.OutputDataReceived += (_, line) => Keep(line.Data);
        process.ErrorDataReceived += (_, line) => Keep(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        Client = new HttpClient(new SocketsHttpHandler { UseProxy = false }) { BaseAddress = Address, Timeout = Timeout.InfiniteTimeSpan };
    }

    public Uri Address { get; }

    /// <summary>Waits for as long as it takes; who asks gives up by a token.</summary>
    public HttpClient Client { get; }

    public string DataFolder => folder;

    public int ProcessId => process.Id;

    public bool HasExited => process.HasExited;

    /// <summary>Null while it runs.</summary>
    public int? ExitCode => process.HasExited ? process.ExitCode : null;

    /// <summary>The last lines that it wrote.</summary>
    public string Said => string.Join('\n', said);

    /// <summary>Memory that it holds now, in megabytes (1e6 bytes); 0 once it has ended.</summary>
    public double ResidentMegabytes => Status("VmRSS:");

    /// <summary>The most memory that it has held so far, in megabytes (1e6 bytes); 0 once it has ended.</summary>
    public double PeakMegabytes => Status("VmHWM:");

    /// <summary>Starts it and waits until it is ready.</summary>
    public static async Task<TrialService> StartAsync(TrialStart start)
    {
        var service = new TrialService(start);
        var started = Stopwatch.GetTimestamp();
        while (!await service.IsReadyAsync(start.ReadyPath))
        {
            if (service.HasExited || Stopwatch.GetElapsedTime(started) > StartsWithin)
            {
                var said = service.Said;
                service.Dispose();
                throw new InvalidOperationException($"The service was not ready: {said}");
            }

            await Task.Delay(50);
        }

        return service;
    }

    public async Task<HttpResponseMessage> SendAsync(HttpMethod method, string path, string? body, string contentType, CancellationToken cancellationToken)
    {
        using var request = new HttpRequestMessage(method, new Uri(path, UriKind.Relative));
        if (body is not null)
        {
            request.Content = new ByteArrayContent(Encoding.UTF8.GetBytes(body));
            request.Content.Headers.TryAddWithoutValidation("Content-Type", contentType);
        }

        return await Client.SendAsync(request, cancellationToken);
    }

    public Task<HttpResponseMessage> PostAsync(string path, string body, CancellationToken cancellationToken) =>
        SendAsync(HttpMethod.Post, path, body, "application/json", cancellationToken);

    /// <summary>Asks the process to end, as an orchestrator does (SIGTERM); it may still answer what it has.</summary>
    public void Terminate() => Signal("TERM");

    /// <summary>Stops the process in its tracks or lets it go on (SIGSTOP, SIGCONT), or any other signal by its name.</summary>
    public void Signal(string name)
    {
        using var kill = Process.Start("kill", [$"-{name}", ProcessId.ToString(CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }

    public Task WaitForExitAsync(CancellationToken cancellationToken) => process.WaitForExitAsync(cancellationToken);

    public void Kill()
    {
        if (!process.HasExited)
        {
            process.Kill();
        }

        process.WaitForExit();
    }

    public void Dispose()
    {
        Kill();
        process.Dispose();
        Client.Dispose();
        if (deletesFolder)
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static IEnumerable<string> Arguments(TrialStart start) => start.Settings.SelectMany(setting => new[] { $"--{setting.Key}", setting.Value });

    private async Task<bool> IsReadyAsync(string path)
    {
        try
        {
            using var response = await Client.GetAsync(new Uri(path, UriKind.Relative));
            return response.IsSuccessStatusCode;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    private void Keep(string? line)
    {
        if (line is not null)
        {
            said.Enqueue(line);
        }

        while (said.Count > KeptLines)
        {
            said.TryDequeue(out _);
        }
    }

    private double Status(string field)
    {
        const double megabytesOfKibibyte = 1024 / 1e6;
        try
        {
            var line = File.ReadLines($"/proc/{ProcessId}/status").FirstOrDefault(one => one.StartsWith(field, StringComparison.Ordinal));
            return line is null
                ? 0
                : double.Parse(line[field.Length..].Replace("kB", "", StringComparison.Ordinal), CultureInfo.InvariantCulture) * megabytesOfKibibyte;
        }
        catch (IOException)
        {
            return 0;
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
