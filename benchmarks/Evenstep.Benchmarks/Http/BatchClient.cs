using System.Globalization;
using System.Net.Sockets;
using System.Text;

namespace Evenstep.Benchmarks.Http;

/// <summary>
/// Sends a batch while reading the answers. It speaks HTTP/1.0, whose answers end with the connection and come in no chunks,
/// so that counting the ends of lines is all it has to do beside.
/// </summary>
internal static class BatchClient
{
    private const int LinesAtOnce = 100;
    private const int HeaderLines = 20;

    /// <summary>Sends so many lines, the bodies in turn, and returns how many were answered with a recommendation.</summary>
    public static async Task<int> SendAsync(Uri target, IReadOnlyList<string> bodies, int lines)
    {
        using var connection = new TcpClient();
        await connection.ConnectAsync(target.Host, target.Port);
        await using var stream = connection.GetStream();
        var sending = Task.Run(() => WriteAsync(stream, target, bodies, lines));
        var answered = await CountAsync(stream);
        await sending;
        return answered;
    }

    private static async Task WriteAsync(NetworkStream stream, Uri target, IReadOnlyList<string> bodies, int lines)
    {
        var length = Enumerable.Range(0, lines).Sum(i => (long)Encoding.UTF8.GetByteCount(LineOf(bodies, i)));
        await stream.WriteAsync(Encoding.UTF8.GetBytes(string.Create(
            CultureInfo.InvariantCulture,
            $"POST {target.AbsolutePath} HTTP/1.0\r\nHost: {target.Authority}\r\nContent-Type: application/x-ndjson\r\nContent-Length: {length}\r\n\r\n")));
        foreach (var chunk in Enumerable.Range(0, lines).Chunk(LinesAtOnce))
        {
            await stream.WriteAsync(Encoding.UTF8.GetBytes(string.Concat(chunk.Select(i => LineOf(bodies, i)))));
        }
    }

    private static string LineOf(IReadOnlyList<string> bodies, int number) => string.Create(
        CultureInfo.InvariantCulture, $"{{\"id\":\"{number}\",{bodies[number % bodies.Count].ReplaceLineEndings("").TrimStart()[1..]}\n");

    private static async Task<int> CountAsync(NetworkStream stream)
    {
        var answered = 0;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        for (var read = 0; await reader.ReadLineAsync() is { } line; read++)
        {
            answered += line.Contains("\"recommendation\":", StringComparison.Ordinal) ? 1 : 0;
            if (read < HeaderLines && line.StartsWith("HTTP/", StringComparison.Ordinal) && !line.Contains(" 200 ", StringComparison.Ordinal))
            {
                throw new InvalidOperationException($"The batch was refused: {line}");
            }
        }

        return answered;
    }
}
