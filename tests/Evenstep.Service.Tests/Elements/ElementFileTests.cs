using System.Text.RegularExpressions;

namespace Evenstep.Service.Tests.Elements;

/// <summary>The files that pages of others take in.</summary>
public sealed partial class ElementFileTests(Service service) : IClassFixture<Service>
{
    private static readonly string Folder = Path.Combine(Repository.Root, "src", "Evenstep.Service", "Elements", "files");

    public static TheoryData<string> Scripts => [.. Directory.EnumerateFiles(Folder, "*.js").Select(path => Path.GetFileName(path)!)];

    [Theory]
    [InlineData("words.js")]
    [MemberData(nameof(Scripts))]
    public async Task A_page_of_any_origin_may_run_a_module(string name)
    {
        using var client = service.CreateClient();
        using var answer = await client.GetAsync(new Uri($"/elements/{name}", UriKind.Relative));

        Assert.Equal((200, "text/javascript"), ((int)answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
        Assert.Equal("*", Assert.Single(answer.Headers.GetValues("Access-Control-Allow-Origin")));
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.True(answer.Headers.CacheControl!.NoCache);
        Assert.NotNull(answer.Headers.ETag);
    }

    [Theory]
    [MemberData(nameof(Scripts))]
    public void No_module_turns_text_into_code_or_markup(string name) =>
        Assert.DoesNotMatch(Forbidden(), File.ReadAllText(Path.Combine(Folder, name)));

    [Theory]
    [MemberData(nameof(Scripts))]
    public async Task A_module_takes_in_nothing_but_its_neighbours(string name)
    {
        var imports = Import().Matches(File.ReadAllText(Path.Combine(Folder, name))).Select(match => match.Groups["path"].Value);

        foreach (var path in imports)
        {
            Assert.StartsWith("./", path, StringComparison.Ordinal);
            Assert.Equal(200, (await service.GetAsync($"/elements/{path[2..]}")).Status);
        }
    }

    [Fact]
    public async Task The_sample_page_is_as_strict_as_a_host_may_be()
    {
        using var client = service.CreateClient();
        using var answer = await client.GetAsync(new Uri("/elements/sample.html", UriKind.Relative));
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        var page = await answer.Content.ReadAsStringAsync();

        Assert.StartsWith("default-src 'none'; script-src 'self'; style-src 'self';", policy, StringComparison.Ordinal);
        Assert.Contains("require-trusted-types-for 'script'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Contains("src=\"ladder.js\"", page, StringComparison.Ordinal);
        Assert.Contains("src=\"advice.js\"", page, StringComparison.Ordinal);
    }

    [GeneratedRegex(
        @"innerHTML|outerHTML|insertAdjacentHTML|document\.write|DOMParser|createContextualFragment|\beval\b|new Function|\.style\.|setAttribute\('style'")]
    private static partial Regex Forbidden();

    [GeneratedRegex("import [^;']*'(?<path>[^']+)'")]
    private static partial Regex Import();
}
