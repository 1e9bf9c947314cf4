using Evenstep.Service.Http.Hosting;
using Microsoft.Extensions.Configuration;

namespace Evenstep.Service.Tests.Http.Hosting;

/// <summary>A caller who sends slowly, or nothing, does not keep a connection.</summary>
public sealed class SlowCallerTests
{
    [Fact]
    public async Task A_head_that_does_not_come_to_its_end_is_refused()
    {
        await using var service = new Service(null, (ServerSettings.HeaderSecondsKey, "1"));
        using var connection = await RawConnection.OpenAsync(service.Listen().Port);
        await connection.SendAsync("GET /health/live HTTP/1.1\r\nHost: localhost\r\nX-Slow: ");

        var answer = await connection.ReadToEndAsync();

        Assert.StartsWith("HTTP/1.1 408 ", answer, StringComparison.Ordinal);
        Assert.Contains("/problems/request-timeout", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_body_that_comes_too_slowly_is_refused()
    {
        await using var service = new Service(null, (ServerSettings.LeastBytesKey, "100000"));
        using var connection = await RawConnection.OpenAsync(service.Listen().Port);
        await connection.SendAsync("POST /v1/recommendations HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 1000\r\n\r\n{");

        var answer = await connection.ReadToEndAsync();

        Assert.StartsWith("HTTP/1.1 408 ", answer, StringComparison.Ordinal);
        Assert.Contains("/problems/request-timeout", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_connection_that_asks_nothing_more_is_closed()
    {
        await using var service = new Service(null, (ServerSettings.KeepAliveSecondsKey, "1"));
        using var connection = await RawConnection.OpenAsync(service.Listen().Port);
        await connection.SendAsync("GET /health/live HTTP/1.1\r\nHost: localhost\r\n\r\n");

        Assert.StartsWith("HTTP/1.1 200 ", await connection.ReadToEndAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(ServerSettings.HeaderSecondsKey, "0")]
    [InlineData(ServerSettings.KeepAliveSecondsKey, "3601")]
    [InlineData(ServerSettings.LeastBytesKey, "NaN")]
    public void A_setting_that_makes_no_sense_stops_the_start(string key, string value)
    {
        var configuration = new ConfigurationBuilder().AddInMemoryCollection([new(key, value)]).Build();

        Assert.Contains(key, Assert.Throws<InvalidOperationException>(() => ServerSettings.From(configuration)).Message, StringComparison.Ordinal);
    }
}
