using System.Diagnostics;
using System.Globalization;

namespace Evenstep.Benchmarks.Http;

/// <summary>Drives wrk with a script that posts the bodies in turn and prints what came of it on one line.</summary>
internal sealed class WrkLoad(string program) : ILoadTool
{
    private const string ResultMark = "result";

    private const string Script = $$"""
        local next_body = 0
        wrk.method = "POST"
        wrk.headers["Content-Type"] = "application/json"

        request = function()
          next_body = next_body % #bodies + 1
          return wrk.format(nil, nil, nil, bodies[next_body])
        end

        done = function(summary, latency, requests)
          local errors = summary.errors
          local failures = errors.connect + errors.read + errors.write + errors.status + errors.timeout
          io.write(string.format("{{ResultMark}} %d %d %d %d %d\n",
            summary.requests, failures, latency:percentile(50), latency:percentile(99), summary.duration))
        end
        """;

    public string Name => "wrk, one thread";

    public string Remark => "";

    /// <summary>Null if it is not on the PATH.</summary>
    public static WrkLoad? IfInstalled()
    {
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        return folders.Select(folder => Path.Combine(folder, "wrk")).FirstOrDefault(File.Exists) is { } found ? new WrkLoad(found) : null;
    }

    public async Task<LoadResult> RunAsync(Load load)
    {
        var scriptPath = Path.GetTempFileName();
        try
        {
            await File.WriteAllTextAsync(scriptPath, $"{BodiesInLua(load.Bodies)}\n{Script}\n");
            return Read(await OutputAsync(load, scriptPath));
        }
        finally
        {
            File.Delete(scriptPath);
        }
    }

    private static string BodiesInLua(IEnumerable<string> bodies) =>
        $"local bodies = {{ {string.Join(", ", bodies.Select(body => $"[==[{body}]==]"))} }}";

    private async Task<string> OutputAsync(Load load, string scriptPath)
    {
        var connections = load.Connections.ToString(CultureInfo.InvariantCulture);
        var seconds = string.Create(CultureInfo.InvariantCulture, $"{load.Time.TotalSeconds:F0}s");
        var start = new ProcessStartInfo(program, ["-t", "1", "-c", connections, "-d", seconds, "-s", scriptPath, load.Target.AbsoluteUri])
        {
            RedirectStandardOutput = true,
        };
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{program} did not start.");
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return output;
    }

    private static LoadResult Read(string output)
    {
        var line = output.Split('\n').FirstOrDefault(one => one.StartsWith(ResultMark, StringComparison.Ordinal))
            ?? throw new InvalidDataException($"No result in what wrk wrote: {output}");
        double[] values = [.. line.Split(' ').Skip(1).Select(value => double.Parse(value, CultureInfo.InvariantCulture))];
        const double microsecondsPerMillisecond = 1e3;
        const double microsecondsPerSecond = 1e6;
        return new LoadResult(
            (int)values[0],
            (int)values[1],
            values[2] / microsecondsPerMillisecond,
            values[3] / microsecondsPerMillisecond,
            values[0] / (values[4] / microsecondsPerSecond));
    }
}
