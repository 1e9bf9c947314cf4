using System.Net;
using System.Net.Sockets;
using System.Text;
using Evenstep.Benchmarks.Trials;

namespace Evenstep.Service.Tests.Endurance;

/// <summary>Many connections send next to nothing, for as long as they may.</summary>
public sealed class SlowConnectionTests
{
    private const int Connections = 200;
    private const int Questions = 50;

    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);

    /// <summary>An address of this machine that is another caller than the one who asks.</summary>
    private static readonly IPAddress SlowCaller = IPAddress.Parse("127.0.0.2");

    [Fact]
    public Task Slow_headers_keep_nobody_waiting_and_are_cut_off() => CheckAsync("POST /v1/recommendations HTTP/1.1\r\nHost: localhost\r\nX-Slow: ");

    [Fact]
    public Task Slow_bodies_keep_nobody_waiting_and_are_cut_off() =>
        CheckAsync("POST /v1/recommendations HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 100000\r\n\r\n{");

    private static async Task CheckAsync(string beginning)
    {
        using var service = await TrialService.StartAsync(Trial.Start());
        using var patience = new CancellationTokenSource(Trial.Patience);
        var slow = Enumerable.Range(0, Connections).Select(_ => TrickleAsync(service.Address, beginning, patience.Token)).ToArray();
        await Task.Delay(Pause);

        foreach (var number in Enumerable.Range(1, Questions))
        {
            Assert.Equal(200, (await service.RecommendAsync(number)).Status);
        }

        Assert.Equal(200, (await service.AskAsync(HttpMethod.Get, "/health/live")).Status);
        Assert.All(await Task.WhenAll(slow), wasCut => Assert.True(wasCut, "A connection was still open when patience ended."));
        Assert.Equal(200, (await service.RecommendAsync()).Status);
    }

    /// <summary>A letter a second, until the service has had enough.</summary>
    private static async Task<bool> TrickleAsync(Uri address, string beginning, CancellationToken patience)
    {
        using var connection = new TcpClient(new IPEndPoint(SlowCaller, 0));
        try
        {
            await connection.ConnectAsync(address.Host, address.Port, patience);
            await using var stream = connection.GetStream();
            await stream.WriteAsync(Encoding.ASCII.GetBytes(beginning), patience);
            var ended = EndAsync(stream, patience);
            while (await Task.WhenAny(ended, Task.Delay(Pause, patience)) != ended && !patience.IsCancellationRequested)
            {
                await stream.WriteAsync("a"u8.ToArray(), patience);
            }

            return !patience.IsCancellationRequested;
        }
        catch (Exception failure) when (failure is IOException or SocketException)
        {
            return true;
        }
        catch (OperationCanceledException)
        {
            return false;
        }
    }

    /// <summary>Ends when the other side has closed.</summary>
    private static async Task EndAsync(NetworkStream stream, CancellationToken patience)
    {
        var buffer = new byte[1000];
        while (await stream.ReadAsync(buffer, patience) > 0)
        {
        }
    }
}
