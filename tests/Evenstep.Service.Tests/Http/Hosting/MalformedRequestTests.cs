using Evenstep.Service.Http.Headers;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Http.Hosting;

/// <summary>What the server cannot read, or will not, is refused in words all the same.</summary>
public sealed class MalformedRequestTests(MalformedRequestTests.Listening listening) : IClassFixture<MalformedRequestTests.Listening>
{
    private const string Host = "Host: localhost\r\nConnection: close\r\n";

    public static TheoryData<string, string, int, string> Requests => new()
    {
        { "a path with NUL", $"GET /%00 HTTP/1.1\r\n{Host}\r\n", 400, "invalid-request" },
        { "no request line", "GARBAGE\r\n\r\n", 400, "invalid-request" },
        { "a header without a colon", $"GET / HTTP/1.1\r\n{Host}Bad Header\r\n\r\n", 400, "invalid-request" },
        { "no host", "GET / HTTP/1.1\r\n\r\n", 400, "invalid-request" },
        { "a host that is none", "GET /v1/targets HTTP/1.1\r\nHost: local host\r\n\r\n", 400, "invalid-request" },
        { "an unknown version", $"GET / HTTP/7.0\r\n{Host}\r\n", 505, "invalid-request" },
        {
            "a broken chunk",
            $"POST /v1/recommendations HTTP/1.1\r\n{Host}Content-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\n",
            400, "invalid-request"
        },
        { "a long address", $"GET /{new string('a', RequestSize.MostTargetCharacters)} HTTP/1.1\r\n{Host}\r\n", 414, "address-too-long" },
        { "an address without end", $"GET /{new string('a', 100_000)} HTTP/1.1\r\n{Host}\r\n", 414, "address-too-long" },
        { "long headers", $"GET / HTTP/1.1\r\n{Host}Cookie: {new string('a', RequestSize.MostHeaderCharacters)}\r\n\r\n", 431, "headers-too-large" },
        { "headers without end", $"GET / HTTP/1.1\r\n{Host}Cookie: {new string('a', 200_000)}\r\n\r\n", 431, "headers-too-large" },
    };

    [Theory]
    [MemberData(nameof(Requests))]
    public async Task It_is_answered_with_a_problem_document(string what, string request, int status, string kind)
    {
        var (head, body) = await AskAsync(request);

        Assert.StartsWith(FormattableString.Invariant($"HTTP/1.1 {status} "), head, StringComparison.Ordinal);
        Assert.Contains("Content-Type: application/problem+json", head, StringComparison.Ordinal);
        Assert.Contains("Cache-Control: no-store", head, StringComparison.Ordinal);
        var problem = Reading.Read<ProblemDetails>(body[body.IndexOf('{', StringComparison.Ordinal)..(body.LastIndexOf('}') + 1)]);
        Assert.Equal(($"/problems/{kind}", status), (problem.Type, problem.Status));
        Assert.True(problem.Detail.Length >= 20, what);
    }

    [Theory]
    [InlineData("/v1/targets", "GET, HEAD, OPTIONS")]
    [InlineData("/v1/recommendations", "POST, OPTIONS")]
    [InlineData("/v1/catalogues/demo", "DELETE, GET, HEAD, PUT, OPTIONS")]
    [InlineData("/", "GET, HEAD, OPTIONS")]
    [InlineData("/page/main.js", "GET, HEAD, OPTIONS")]
    [InlineData("/elements/ladder.js", "GET, HEAD, OPTIONS")]
    [InlineData("*", "DELETE, GET, HEAD, OPTIONS, PATCH, POST, PUT")]
    public async Task OPTIONS_tells_what_an_address_takes(string address, string allowed)
    {
        var (head, body) = await AskAsync($"OPTIONS {address} HTTP/1.1\r\n{Host}\r\n");

        Assert.StartsWith("HTTP/1.1 204 ", head, StringComparison.Ordinal);
        Assert.Contains($"Allow: {allowed}\r\n", head + "\r\n", StringComparison.Ordinal);
        Assert.Empty(body);
    }

    [Theory]
    [InlineData("OPTIONS", "/v1/nothing", 404)]
    [InlineData("POST", "/", 405)]
    [InlineData("DELETE", "/v1/targets", 405)]
    public async Task Other_methods_and_addresses_are_refused_in_words(string method, string address, int status)
    {
        var (head, body) = await AskAsync($"{method} {address} HTTP/1.1\r\n{Host}Content-Length: 0\r\n\r\n");

        Assert.StartsWith(FormattableString.Invariant($"HTTP/1.1 {status} "), head, StringComparison.Ordinal);
        Assert.Contains("\"detail\"", body, StringComparison.Ordinal);
    }

    private async Task<(string Head, string Body)> AskAsync(string request)
    {
        var answer = await RawConnection.AskAsync(listening.Port, request);
        var end = answer.IndexOf("\r\n\r\n", StringComparison.Ordinal);
        return end < 0 ? (answer, "") : (answer[..end], answer[(end + 4)..]);
    }

    /// <summary>A service on a port of its own.</summary>
    public sealed class Listening : IDisposable
    {
        private readonly Service service = new();

        public Listening() => Port = service.Listen().Port;

        public int Port { get; }

        public void Dispose() => service.Dispose();
    }
}
