using Evenstep.Service.Http.Headers;

namespace Evenstep.Service.Tests.Features.ProductPages;

/// <summary>A cache between a shop and its visitors must not give a page's browser what it kept for a server.</summary>
public sealed class OriginTests
{
    private const string Path = "/v1/catalogues/demo/telescopes/jetty-112/recommendation?budget=60";

    [Theory]
    [InlineData("https://club.example", null, true)]
    [InlineData("https://club.example", "https://club.example", true)]
    [InlineData("https://club.example https://shop.example", "https://club.example", true)]
    [InlineData("*", null, true)]
    [InlineData("", null, false)]
    public async Task Where_pages_are_let_in_answers_vary_by_origin(string origins, string? origin, bool varies)
    {
        await using var service = new Service(null, (PageOrigins.Key, origins));

        var answer = await service.SendAsync(HttpMethod.Get, Path, headers: origin is null ? [] : [("Origin", origin)]);

        Assert.Equal(200, answer.Status);
        Assert.Equal(varies ? 1 : 0, answer.Vary.Split(", ").Count(name => name == "Origin"));
    }
}
