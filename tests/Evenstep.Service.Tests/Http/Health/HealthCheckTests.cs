using Evenstep.Service.Http.Health;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace Evenstep.Service.Tests.Http.Health;

public sealed class HealthCheckTests
{
    [Theory]
    [InlineData(StatusCodes.Status200OK, 0)]
    [InlineData(StatusCodes.Status503ServiceUnavailable, 1)]
    public async Task The_program_asks_a_service_whether_it_is_ready(int status, int exitCode)
    {
        await using var service = WebApplication.CreateSlimBuilder().Build();
        service.Urls.Add("http://127.0.0.1:0");
        service.MapGet("/health/ready", () => Results.Text("as it is", statusCode: status));
        await service.StartAsync();
        using var words = new StringWriter();

        Assert.Equal(exitCode, await HealthCheck.RunAsync(["--urls", service.Urls.Single()], words));
        Assert.Equal("as it is", words.ToString().Trim());
    }

    [Fact]
    public async Task Where_nothing_answers_nothing_is_ready()
    {
        using var words = new StringWriter();

        Assert.Equal(1, await HealthCheck.RunAsync(["--urls", "http://127.0.0.1:1"], words));
        Assert.Contains("http://127.0.0.1:1/", words.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("http://*:8080", "http://localhost:8080/")]
    [InlineData("http://[::]:8080", "http://localhost:8080/")]
    [InlineData("http://0.0.0.0:8080", "http://localhost:8080/")]
    [InlineData("http://127.0.0.2:8080", "http://127.0.0.2:8080/")]
    [InlineData("https://*:8443;http://+:81", "http://localhost:81/")]
    [InlineData("https://*:8443", null)]
    public void A_service_that_listens_everywhere_is_found_at_home(string addresses, string? found) =>
        Assert.Equal(found, OwnAddress.Among(addresses.Split(';'))?.ToString());
}
