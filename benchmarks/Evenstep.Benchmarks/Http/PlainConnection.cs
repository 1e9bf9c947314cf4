using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace Evenstep.Benchmarks.Http;

/// <summary>One connection that sends a request and reads its answer, with as little work as can be: what it takes is not the service's.</summary>
internal sealed class PlainConnection(Uri target) : IDisposable
{
    private const int BufferBytes = 64 * 1024;

    private readonly byte[] buffer = new byte[BufferBytes];
    private Socket? socket;

    /// <summary>A request as it goes over the wire.</summary>
    public static byte[] Request(Uri target, string method, string? body = null, string? key = null)
    {
        var head = string.Create(CultureInfo.InvariantCulture, $"{method} {target.PathAndQuery} HTTP/1.1\r\nHost: {target.Authority}\r\n");
        var authorization = key is null ? "" : $"Authorization: Bearer {key}\r\n";
        var length = body is null ? 0 : Encoding.UTF8.GetByteCount(body);
        var content = body is null ? "" : string.Create(CultureInfo.InvariantCulture, $"Content-Type: application/json\r\nContent-Length: {length}\r\n");
        return Encoding.UTF8.GetBytes($"{head}{authorization}{content}\r\n{body}");
    }

    /// <summary>The status of the answer; 0 if there was none.</summary>
    public async Task<int> SendAsync(ReadOnlyMemory<byte> request, CancellationToken cancellationToken)
    {
        try
        {
            socket ??= await ConnectAsync(cancellationToken);
            await socket.SendAsync(request, cancellationToken);
            return await ReceiveAsync(socket, cancellationToken);
        }
        catch (SocketException)
        {
            Dispose();
            return 0;
        }
        catch (OperationCanceledException)
        {
            Dispose();
            throw;
        }
    }

    public void Dispose()
    {
        socket?.Dispose();
        socket = null;
    }

    private async Task<Socket> ConnectAsync(CancellationToken cancellationToken)
    {
        var connecting = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        await connecting.ConnectAsync(IPAddress.Parse(target.Host), target.Port, cancellationToken);
        return connecting;
    }

    private async Task<int> ReceiveAsync(Socket from, CancellationToken cancellationToken)
    {
        var (read, headEnd) = (0, -1);
        while (headEnd < 0)
        {
            var more = read < buffer.Length ? await from.ReceiveAsync(buffer.AsMemory(read), cancellationToken) : 0;
            if (more == 0)
            {
                Dispose();
                return 0;
            }

            read += more;
            headEnd = buffer.AsSpan(0, read).IndexOf("\r\n\r\n"u8);
        }

        var status = int.Parse(buffer.AsSpan("HTTP/1.1 ".Length, 3), NumberStyles.None, CultureInfo.InvariantCulture);
        await SkipBodyAsync(from, headEnd + 4, read, cancellationToken);
        return status;
    }

    private async Task SkipBodyAsync(Socket from, int start, int read, CancellationToken cancellationToken)
    {
        if (LengthIn(buffer.AsSpan(0, start)) is { } length)
        {
            for (var left = length - (read - start); left > 0;)
            {
                var more = await from.ReceiveAsync(buffer, cancellationToken);
                left = more == 0 ? 0 : left - more;
            }

            return;
        }

        // In chunks: the last one is empty.
        while (!buffer.AsSpan(0, read).EndsWith("0\r\n\r\n"u8))
        {
            var keep = Math.Min(read, 8);
            buffer.AsSpan(read - keep, keep).CopyTo(buffer);
            var more = await from.ReceiveAsync(buffer.AsMemory(keep), cancellationToken);
            if (more == 0)
            {
                return;
            }

            read = keep + more;
        }
    }

    private static int? LengthIn(ReadOnlySpan<byte> head)
    {
        var at = head.IndexOf("\r\nContent-Length: "u8);
        if (at < 0)
        {
            return null;
        }

        var value = head[(at + "\r\nContent-Length: ".Length)..];
        return int.Parse(value[..value.IndexOf((byte)'\r')], NumberStyles.None, CultureInfo.InvariantCulture);
    }
}
