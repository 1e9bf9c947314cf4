using System.Reflection;
using System.Text.RegularExpressions;

namespace Evenstep.Service.Tests.House;

/// <summary>What the page on security says is held by tests.</summary>
public sealed partial class SecurityTests(Service service) : IClassFixture<Service>
{
    private const int Risks = 10;

    private static readonly string Text = File.ReadAllText(Path.Combine(Repository.Root, ".github", "SECURITY.md"));

    /// <summary>What may ask somebody by HTTP: both ask this service.</summary>
    private static readonly string[] Asking = ["HealthCheck.cs", "SelfRequest.cs"];

    [Fact]
    public void Every_risk_has_tests_and_each_of_them_exists()
    {
        var rows = Row().Matches(Text);
        var facts = typeof(SecurityTests).Assembly.GetTypes()
            .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly))
            .Where(method => method.GetCustomAttribute<FactAttribute>(inherit: true) is not null)
            .Select(method => $"{method.DeclaringType!.Name}.{method.Name}")
            .ToHashSet();

        Assert.Equal(Enumerable.Range(1, Risks).Select(risk => FormattableString.Invariant($"API{risk}")), rows.Select(row => row.Groups["risk"].Value));
        Assert.All(rows, row =>
        {
            var named = Test().Matches(row.Groups["tests"].Value).Select(match => match.Groups["test"].Value).ToList();
            Assert.NotEmpty(named);
            Assert.All(named, test => Assert.Contains(test, facts));
        });
    }

    [Fact]
    public void Nothing_but_the_health_check_and_the_warm_up_asks_anybody_by_HTTP()
    {
        var asking = Directory.EnumerateFiles(Path.Combine(Repository.Root, "src"), "*.cs", SearchOption.AllDirectories)
            .Where(path => !path.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Where(path => Client().IsMatch(File.ReadAllText(path)))
            .Select(Path.GetFileName);

        Assert.Equal(Asking, asking.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/swagger/index.html")]
    [InlineData("/elements/sample.html")]
    public async Task Every_page_has_a_policy_that_lets_nothing_in_from_elsewhere(string page)
    {
        using var client = service.CreateClient();
        using var answer = await client.GetAsync(new Uri(page, UriKind.Relative));

        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Equal("text/html", answer.Content.Headers.ContentType!.MediaType);
        Assert.All(["default-src 'none'", "script-src 'self'", "base-uri 'none'", "frame-ancestors 'none'"], part => Assert.Contains(part, policy.Split("; ")));
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
    }

    [GeneratedRegex(@"^\| (?<risk>API\d+) [^|]*\|[^|]*\| (?<tests>[^|]*) \|$", RegexOptions.Multiline)]
    private static partial Regex Row();

    [GeneratedRegex("`(?<test>[^`]+)`")]
    private static partial Regex Test();

    [GeneratedRegex(@"\b(HttpClient|WebRequest|TcpClient|HttpMessageInvoker|WebClient)\b")]
    private static partial Regex Client();
}
