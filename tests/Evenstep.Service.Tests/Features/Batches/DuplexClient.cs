using System.Globalization;
using System.Net.Sockets;
using System.Text;

namespace Evenstep.Service.Tests.Features.Batches;

/// <summary>Sends a body in pieces and reads the answer meanwhile, as the usual clients do not over HTTP/1.1.</summary>
internal sealed class DuplexClient : IDisposable
{
    private readonly TcpClient connection = new();
    private readonly BufferedStream answer;
    private int left;
    private bool isInBody;

    private DuplexClient(Uri server)
    {
        connection.Connect(server.Host, server.Port);
        connection.NoDelay = true;
        answer = new BufferedStream(connection.GetStream());
    }

    /// <summary>Opens a request whose body is to follow.</summary>
    public static async Task<DuplexClient> PostAsync(Uri server, string path, string contentType, params string[] headers)
    {
        var client = new DuplexClient(server);
        await client.WriteAsync(
            $"POST {path} HTTP/1.1\r\nHost: {server.Authority}\r\nContent-Type: {contentType}\r\nTransfer-Encoding: chunked\r\n" +
            $"{string.Concat(headers.Select(header => $"{header}\r\n"))}\r\n");
        return client;
    }

    public Task SendAsync(string piece) => WriteAsync(string.Create(
        CultureInfo.InvariantCulture, $"{Encoding.UTF8.GetByteCount(piece):x}\r\n{piece}\r\n"));

    public Task EndAsync() => WriteAsync("0\r\n\r\n");

    /// <summary>The next line of the answer's body; null at its end.</summary>
    public Task<string?> LineAsync() => Task.Run(() =>
    {
        if (!isInBody)
        {
            isInBody = true;
            while (RawLine().Length > 0)
            {
            }
        }

        var line = new List<byte>();
        while (NextByte() is { } one)
        {
            if (one == '\n')
            {
                return Encoding.UTF8.GetString([.. line]);
            }

            line.Add(one);
        }

        return null;
    });

    public void Dispose()
    {
        answer.Dispose();
        connection.Dispose();
    }

    /// <summary>A byte of the body, out of the chunks that it comes in.</summary>
    private byte? NextByte()
    {
        if (left == 0)
        {
            left = int.Parse(RawLine(), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
            if (left == 0)
            {
                return null;
            }
        }

        var one = RawByte();
        left--;
        if (left == 0)
        {
            RawLine();
        }

        return one;
    }

    private string RawLine()
    {
        var line = new StringBuilder();
        while (RawByte() is var one && one != '\n')
        {
            line.Append((char)one);
        }

        return line.ToString().TrimEnd('\r');
    }

    private byte RawByte() => answer.ReadByte() is >= 0 and var one ? (byte)one : throw new EndOfStreamException("The answer broke off.");

    private async Task WriteAsync(string text) => await connection.GetStream().WriteAsync(Encoding.UTF8.GetBytes(text));
}
