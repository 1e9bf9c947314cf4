using Evenstep.Service.Http.Headers;

namespace Evenstep.Service.Tests.Http.Authentication;

/// <summary>Keys that pages in browsers use, and what browsers are told.</summary>
public sealed class BrowserKeyTests : IAsyncDisposable
{
    private const string Shop = "https://shop.example";
    private const string Club = "https://club.example:8443";
    private const string AllowOrigin = "Access-Control-Allow-Origin";

    private static readonly Keyed ShopKey = new("shop", "shop") { Scopes = "read", Origins = $"{Shop}, https://www.shop.example" };
    private static readonly Keyed ClubKey = new("club", "club") { Scopes = "read", Origins = Club };
    private static readonly Keyed ServerKey = new("server", "shop");

    private readonly Service service = Keyed.ServiceWith(ShopKey, ClubKey, ServerKey);

    public ValueTask DisposeAsync() => service.DisposeAsync();

    [Theory]
    [InlineData("/v1/recommendations", "POST", Shop, Shop)]
    [InlineData("/v1/recommendations", "POST", "https://www.shop.example", "https://www.shop.example")]
    [InlineData("/v1/catalogues/demo/items/kelpstone-5-5/match", "GET", Club, Club)]
    [InlineData("/v1/recommendations", "POST", "https://elsewhere.example", null)]
    [InlineData("/v1/recommendations", "POST", "http://shop.example", null)]
    [InlineData("/v1/recommendations", "POST", "null", null)]
    [InlineData("/health/live", "GET", Shop, null)]
    public async Task A_browser_that_asks_beforehand_is_told_whether_the_origin_is_one_of_a_key(string path, string method, string origin, string? allowed)
    {
        using var response = await SendAsync(
            HttpMethod.Options, path, ("Origin", origin), ("Access-Control-Request-Method", method),
            ("Access-Control-Request-Headers", "authorization,content-type"));

        Assert.Equal(allowed, ValueOf(response, AllowOrigin));
        if (allowed is not null)
        {
            Assert.Equal(204, (int)response.StatusCode);
            Assert.Contains("authorization", ValueOf(response, "Access-Control-Allow-Headers")!, StringComparison.OrdinalIgnoreCase);
            Assert.Contains(method, ValueOf(response, "Access-Control-Allow-Methods")!, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(Shop, 200, Shop)]
    [InlineData(Club, 403, Club)]
    [InlineData("https://elsewhere.example", 403, null)]
    [InlineData(null, 403, null)]
    public async Task A_key_of_a_page_goes_with_its_origins_only(string? origin, int status, string? allowed)
    {
        using var response = await SendAsync(HttpMethod.Get, "/v1/targets", ShopKey.Header, ("Origin", origin));

        Assert.Equal((status, allowed), ((int)response.StatusCode, ValueOf(response, AllowOrigin)));
    }

    [Fact]
    public async Task A_key_without_origins_needs_none()
    {
        using var response = await SendAsync(HttpMethod.Get, "/v1/targets", ServerKey.Header);

        Assert.Equal((200, null), ((int)response.StatusCode, ValueOf(response, AllowOrigin)));
    }

    [Fact]
    public async Task A_page_may_read_why_it_was_refused()
    {
        using var response = await SendAsync(HttpMethod.Get, "/v1/targets", ("Origin", Shop));

        Assert.Equal((401, Shop), ((int)response.StatusCode, ValueOf(response, AllowOrigin)));
        Assert.Contains("RateLimit", ValueOf(response, "Access-Control-Expose-Headers")!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_all_pages_are_let_in_they_may_send_a_key_too()
    {
        await using var open = new Service(null, [.. ShopKey.Settings, (PageOrigins.Key, "*")]);
        using var request = new HttpRequestMessage(HttpMethod.Options, "/v1/catalogues/demo/items/kelpstone-5-5/match");
        request.Headers.Add("Origin", Shop);
        request.Headers.Add("Access-Control-Request-Method", "GET");
        request.Headers.Add("Access-Control-Request-Headers", "authorization");
        using var client = open.CreateClient();
        using var response = await client.SendAsync(request);

        Assert.Equal("*", ValueOf(response, AllowOrigin));
        Assert.Contains("authorization", ValueOf(response, "Access-Control-Allow-Headers") ?? "", StringComparison.OrdinalIgnoreCase);
    }

    private async Task<HttpResponseMessage> SendAsync(HttpMethod method, string path, params (string Name, string? Value)[] headers)
    {
        using var request = new HttpRequestMessage(method, new Uri(path, UriKind.Relative));
        foreach (var (name, value) in headers.Where(header => header.Value is not null))
        {
            request.Headers.TryAddWithoutValidation(name, value);
        }

        using var client = service.CreateClient();
        return await client.SendAsync(request);
    }

    private static string? ValueOf(HttpResponseMessage response, string header) =>
        response.Headers.TryGetValues(header, out var values) ? string.Join(", ", values) : null;
}
