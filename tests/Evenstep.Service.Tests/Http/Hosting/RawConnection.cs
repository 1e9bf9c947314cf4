using System.Net;
using System.Net.Sockets;
using System.Text;

namespace Evenstep.Service.Tests.Http.Hosting;

/// <summary>A connection on which whatever bytes can be sent.</summary>
internal sealed class RawConnection : IDisposable
{
    /// <summary>So that a service that does not answer ends the test.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly TcpClient client = new();

    private RawConnection()
    {
    }

    public static async Task<RawConnection> OpenAsync(int port)
    {
        var connection = new RawConnection();
        await connection.client.ConnectAsync(IPAddress.Loopback, port);
        return connection;
    }

    /// <summary>Sends a request that asks to close the connection, and reads all that is answered.</summary>
    public static async Task<string> AskAsync(int port, string request)
    {
        using var connection = await OpenAsync(port);
        await connection.SendAsync(request);
        return await connection.ReadToEndAsync();
    }

    public async Task SendAsync(string text) => await client.GetStream().WriteAsync(Encoding.Latin1.GetBytes(text));

    /// <summary>All that comes until the other side closes the connection.</summary>
    public async Task<string> ReadToEndAsync()
    {
        using var late = new CancellationTokenSource(Patience);
        using var answer = new MemoryStream();
        try
        {
            await client.GetStream().CopyToAsync(answer, late.Token);
        }
        catch (IOException)
        {
            // Closed before all that was sent had been read: what was answered has come.
        }

        return Encoding.UTF8.GetString(answer.ToArray());
    }

    public void Dispose() => client.Dispose();
}
