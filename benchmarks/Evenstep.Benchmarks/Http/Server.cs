using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace Evenstep.Benchmarks.Http;

/// <summary>A web server in a child process, on a free port of the loopback address.</summary>
internal sealed class Server : IDisposable
{
    private static readonly TimeSpan StartsWithin = TimeSpan.FromSeconds(60);

    private static readonly TimeSpan RestsFor = TimeSpan.FromMilliseconds(300);

    private readonly Process process;

    private Server(Process process, Uri address)
    {
        this.process = process;
        Address = address;
    }

    public Uri Address { get; }

    /// <summary>How long processors have worked for the process.</summary>
    public TimeSpan ProcessorTime
    {
        get
        {
            process.Refresh();
            return process.TotalProcessorTime;
        }
    }

    /// <summary>Waits until the threads that solve have done nothing for a while.</summary>
    /// <returns>A timestamp: when they were last seen at work.</returns>
    public async Task<long> WhenSolvesRestAsync()
    {
        var (last, worked) = (Stopwatch.GetTimestamp(), -1L);
        while (Stopwatch.GetElapsedTime(last) < RestsFor)
        {
            var now = SolvingNanoseconds();
            last = now > worked ? Stopwatch.GetTimestamp() : last;
            worked = Math.Max(worked, now);
            await Task.Delay(TimeSpan.FromMilliseconds(1));
        }

        return last;
    }

    /// <summary>How much of the machine's memory the process holds now.</summary>
    public long ResidentBytes
    {
        get
        {
            process.Refresh();
            return process.WorkingSet64;
        }
    }

    /// <summary>The service that was built along with the benchmarks, with these catalogues besides its own.</summary>
    public static Task<Server> ServiceAsync(string catalogueFolder, int cacheMegabytes) => StartAsync(url =>
    [
        Repository.ServiceAssembly,
        "--urls", url,
        "--Evenstep:CatalogueFolder", catalogueFolder,
        "--Evenstep:CacheMegabytes", cacheMegabytes.ToString(CultureInfo.InvariantCulture),
    ]);

    /// <summary>The same on one core, the second, as if there were no other.</summary>
    public static Task<Server> OnOneCoreAsync(string catalogueFolder, params string[] settings) => StartAsync(
        url =>
        [
            "-c", "1", "dotnet", Repository.ServiceAssembly, "--urls", url, "--Evenstep:CatalogueFolder", catalogueFolder, "--Evenstep:CacheMegabytes", "0",
            .. settings
        ],
        "taskset",
        ("DOTNET_PROCESSOR_COUNT", "1"));

    public static Task<Server> FloorAsync(string answerPath) =>
        StartAsync(url => [typeof(Server).Assembly.Location, Floor.Command, url, answerPath]);

    public void Dispose()
    {
        process.Kill();
        process.WaitForExit();
        process.Dispose();
    }

    /// <summary>Processor time of the threads that solve, as Linux counts it.</summary>
    private long SolvingNanoseconds() => Directory.EnumerateDirectories($"/proc/{process.Id}/task")
        .Where(task => TextOf(task, "comm").StartsWith("solve", StringComparison.Ordinal))
        .Sum(task => long.TryParse(TextOf(task, "schedstat").Split(' ')[0], NumberStyles.None, CultureInfo.InvariantCulture, out var time) ? time : 0);

    /// <summary>Nothing if the thread has ended.</summary>
    private static string TextOf(string task, string name)
    {
        try
        {
            return File.ReadAllText(System.IO.Path.Combine(task, name));
        }
        catch (IOException)
        {
            return "";
        }
    }

    private static async Task<Server> StartAsync(Func<string, string[]> arguments, string program = "dotnet", params (string Name, string Value)[] environment)
    {
        var url = $"http://127.0.0.1:{FreePort()}";
        var start = new ProcessStartInfo(program, arguments(url)) { RedirectStandardOutput = true, RedirectStandardError = true };
        // The web SDK turns this on for the service; without it the floor would collect garbage in another way.
        start.Environment["DOTNET_gcServer"] = "1";
        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        var process = Process.Start(start) ?? throw new InvalidOperationException($"{arguments(url)[0]} did not start.");
        // Whoever does not read what a child writes makes it wait.
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, line) => Console.Error.WriteLine(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        var server = new Server(process, new Uri(url));
        await server.WaitUntilReadyAsync();
        return server;
    }

    private async Task WaitUntilReadyAsync()
    {
        using var client = new HttpClient();
        using var patience = new CancellationTokenSource(StartsWithin);
        while (!await IsReadyAsync(client, patience.Token))
        {
            if (process.HasExited)
            {
                throw new InvalidOperationException($"The server for {Address} ended before it was ready.");
            }

            await Task.Delay(TimeSpan.FromMilliseconds(100), patience.Token);
        }
    }

    private async Task<bool> IsReadyAsync(HttpClient client, CancellationToken cancellation)
    {
        try
        {
            using var response = await client.GetAsync(new Uri(Address, HttpRuns.ReadyPath), cancellation);
            return response.IsSuccessStatusCode;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
