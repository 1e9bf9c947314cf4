using System.Net.Sockets;
using Evenstep.Service.Http.Hosting;
using Evenstep.Service.Tests.Answering.Metrics;
using Evenstep.Service.Tests.Catalogues.Storing;

namespace Evenstep.Service.Tests.Http.Hosting;

/// <summary>Callers who take all connections that there are do not end the process.</summary>
public sealed class DescriptorTests
{
    private const int MostFiles = 448;

    [LinuxFact]
    public async Task A_lack_of_file_descriptors_is_outlasted()
    {
        using var data = new DataFolder();
        var (service, _) = await ServiceProcess.StartAsync(data.Path, MostFiles);
        using var outlasting = service;
        List<RawConnection> connections = [];
        for (var i = 0; i < MostFiles; i++)
        {
            await OpenAsync(service.Port, connections);
        }

        await Eventually.TrueAsync(() => service.HasExited || service.Said.Any(line => line.Contains("further ones are closed", StringComparison.Ordinal)));
        connections.ForEach(connection => connection.Dispose());

        await Eventually.TrueAsync(async () => service.HasExited || await service.SendAsync(HttpMethod.Get, "/health/live") is { Status: 200 });
        Assert.False(service.HasExited, string.Join('\n', service.Said));
        Assert.Equal(200, (await service.SendAsync(HttpMethod.Post, "/v1/recommendations", Repository.Example("recommendation-shortest")))!.Status);
    }

    [Theory]
    [InlineData("Max open files            1024                 1048576              files     ", 1024)]
    [InlineData("Max open files            unlimited            unlimited            files     ", int.MaxValue)]
    [InlineData("Max processes             1024                 1024                 processes ", int.MaxValue)]
    public void The_soft_limit_counts(string line, int most) => Assert.Equal(most, DescriptorLimit.Read(["Limit  Soft Limit  Hard Limit  Units", line]));

    [Theory]
    [InlineData(400, 336)]
    [InlineData(1024, 896)]
    [InlineData(524_288, 524_032)]
    public void Some_are_kept_for_what_is_no_connection(int most, int first) => Assert.Equal(first, new DescriptorLimit(most).FirstForOthers);

    /// <summary>With the beginning of a request, so that the service has something to read.</summary>
    private static async Task OpenAsync(int port, List<RawConnection> connections)
    {
        try
        {
            connections.Add(await RawConnection.OpenAsync(port));
            await connections[^1].SendAsync("GET /health/live HTTP/1.1\r\nHost: localhost\r\n");
        }
        catch (Exception exception) when (exception is IOException or SocketException)
        {
            // Closed already, as it should be.
        }
    }
}

/// <summary>A fact about Linux.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class LinuxFactAttribute : FactAttribute
{
    public LinuxFactAttribute() => Skip = OperatingSystem.IsLinux() ? null : "The number of open files is limited in this way on Linux only.";
}
