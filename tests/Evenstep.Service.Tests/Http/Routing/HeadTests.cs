using Evenstep.Service.Tests.Features.Batches;
using Evenstep.Service.Tests.Http.OpenApi;

namespace Evenstep.Service.Tests.Http.Routing;

/// <summary>HEAD gets the headers of GET and no body (RFC 9110, sections 9.1 and 9.3.2).</summary>
/// <param name="service">A real server, for it is the server that leaves the body out.</param>
public sealed class HeadTests(ListeningService service) : IClassFixture<ListeningService>
{
    /// <summary>What says how the body is sent, which HEAD has none of (RFC 9110, section 9.3.2).</summary>
    private static readonly string[] OfSending = ["Date", "Transfer-Encoding"];

    public static TheoryData<string> Addresses =>
    [
        .. Operation.All.Where(operation => operation.Method == "GET").Select(operation => operation.Address),
        "/openapi/v1.json", "/metrics", "/", "/swagger/index.html", "/page/main.js", "/elements/ladder.js", "/v1/catalogues/none", "/nothing",
    ];

    [Fact]
    public async Task HEAD_gets_the_headers_of_GET_and_no_body()
    {
        foreach (var address in Addresses)
        {
            var (get, head) = (await AskAsync(HttpMethod.Get, address), await AskAsync(HttpMethod.Head, address));

            Assert.Equal((address, get.Status), (address, head.Status));
            Assert.Equal((address, ""), (address, head.Body));
            Assert.True(get.Body.Length > 0, address);

            // Where a body was sent in parts, HEAD may still tell its length.
            Assert.Equal(get.Headers, head.Headers.Where(header => header.Key != "Content-Length" || get.Headers.ContainsKey(header.Key)));
        }
    }

    [Theory]
    [InlineData("/v1/catalogues/demo")]
    [InlineData("/v1/catalogues/demo/telescopes/capstan-152/recommendation")]
    [InlineData("/v1/catalogues/demo/items/kelpstone-5-5/match?telescope=capstan-152")]
    public async Task A_caller_that_has_the_answer_already_gets_304_by_HEAD_too(string address)
    {
        var tag = (await AskAsync(HttpMethod.Get, address)).Headers["ETag"];

        var head = await AskAsync(HttpMethod.Head, address, ("If-None-Match", tag));

        Assert.Equal((304, tag), (head.Status, head.Headers["ETag"]));
        Assert.Equal(200, (await AskAsync(HttpMethod.Head, address, ("If-None-Match", "\"other\""))).Status);
    }

    [Theory]
    [InlineData("DELETE", "/v1/targets", "GET, HEAD")]
    [InlineData("DELETE", "/v1/catalogues", "GET, HEAD")]
    [InlineData("POST", "/v1/catalogues/demo", "DELETE, GET, HEAD, PUT")]
    [InlineData("HEAD", "/v1/recommendations", "POST")]
    [InlineData("POST", "/health/live", "GET, HEAD")]
    [InlineData("POST", "/metrics", "GET, HEAD")]
    public async Task What_is_allowed_is_said(string method, string address, string allowed)
    {
        var answer = await AskAsync(new HttpMethod(method), address);

        Assert.Equal((405, allowed), (answer.Status, answer.Headers["Allow"]));
    }

    private async Task<(int Status, string Body, SortedDictionary<string, string> Headers)> AskAsync(
        HttpMethod method, string address, params (string Name, string Value)[] headers)
    {
        using var client = service.CreateClient();
        using var request = new HttpRequestMessage(method, new Uri(address, UriKind.Relative));
        foreach (var (name, value) in headers)
        {
            request.Headers.TryAddWithoutValidation(name, value);
        }

        using var response = await client.SendAsync(request);
        var all = response.Headers.Concat(response.Content.Headers).Where(header => !OfSending.Contains(header.Key))
            .ToDictionary(header => header.Key, header => string.Join(", ", header.Value));
        var body = await response.Content.ReadAsStringAsync();
        return ((int)response.StatusCode, body, new SortedDictionary<string, string>(all, StringComparer.Ordinal));
    }
}
