using System.Net;
using System.Text.RegularExpressions;

namespace Evenstep.Service.Tests.Pages;

/// <summary>How the files of the page are served.</summary>
public sealed partial class PageFileTests(Service service) : IClassFixture<Service>
{
    [Fact]
    public async Task The_front_page_is_the_page_and_leads_to_the_document()
    {
        var page = await service.GetAsync("/");

        Assert.Equal((200, "text/html"), (page.Status, page.ContentType));
        Assert.Contains("/swagger", page.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_file_it_names_is_there_and_comes_from_here()
    {
        var page = await service.GetAsync("/");
        string[] named = [.. Address().Matches(page.Body).Select(match => match.Groups["path"].Value)];

        Assert.NotEmpty(named);
        foreach (var path in named.Where(path => path != "/swagger"))
        {
            Assert.StartsWith("/page/", path, StringComparison.Ordinal);
            Assert.Equal(200, (await service.GetAsync(path)).Status);
        }
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/page/main.js")]
    [InlineData("/page/page.css")]
    public async Task Its_files_forbid_what_they_do_not_need_and_are_asked_for_again_each_time(string path)
    {
        using var client = service.CreateClient();
        using var first = await client.GetAsync(new Uri(path, UriKind.Relative));

        var policy = Assert.Single(first.Headers.GetValues("Content-Security-Policy"));
        Assert.StartsWith("default-src 'none'; script-src 'self'; style-src 'self';", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.True(first.Headers.CacheControl!.NoCache);

        using var again = new HttpRequestMessage(HttpMethod.Get, path);
        again.Headers.IfNoneMatch.Add(first.Headers.ETag!);
        using var second = await client.SendAsync(again);
        Assert.Equal(HttpStatusCode.NotModified, second.StatusCode);
    }

    [GeneratedRegex("(?:href|src)=\"(?<path>[^\"]+)\"")]
    private static partial Regex Address();
}
