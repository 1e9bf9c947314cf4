using Evenstep.Service.Features.ProductPages;
using Evenstep.Service.Http.Headers;
using Evenstep.Service.Tests.Answering.Metrics;

namespace Evenstep.Service.Tests.Features.ProductPages;

/// <summary>A page's answer may be kept by whoever fetched it, and is known again by its tag.</summary>
public sealed class PageCachingTests(Service service) : IClassFixture<Service>
{
    private const string TelescopePage = "/v1/catalogues/demo/telescopes/capstan-152/recommendation?budget=100&age=40&owned=kelpstone-5-5";
    private const string ItemPage = "/v1/catalogues/demo/items/kelpstone-5-5/match?telescope=capstan-152&age=40";
    private const string Shop = "https://shop.example";

    public static TheoryData<string> Pages => [TelescopePage, ItemPage];

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task A_page_says_how_long_it_may_be_kept_and_what_it_depends_on(string path)
    {
        var page = await PageAsync(path);

        Assert.Equal((200, "public, max-age=60, stale-while-revalidate=600", "Accept, Accept-Language"), (page.Status, page.CacheControl, page.Vary));
        Assert.Matches("^\"[0-9a-f]{24}\"$", page.ETag);
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task The_same_page_has_the_same_tag_and_another_has_another(string path)
    {
        var page = await PageAsync(path);
        var (ends, begins) = (path.Split('?')[1].Split('&'), path.Split('?')[0]);

        Assert.Equal(page.ETag, (await PageAsync(path)).ETag);
        Assert.Equal((page.ETag, page.Body), await TagAndBodyAsync($"{begins}?{string.Join('&', ends.Reverse())}"));
        Assert.NotEqual(page.ETag, (await PageAsync($"{path}&seeingArcsec=3")).ETag);
        Assert.NotEqual(page.ETag, (await PageAsync(path, ("Accept-Language", "de"))).ETag);
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task A_caller_that_has_the_answer_already_gets_304(string path)
    {
        var tag = (await PageAsync(path)).ETag!;

        foreach (var held in (string[])[tag, $"W/{tag}", $"\"other\", {tag}", "*"])
        {
            var page = await PageAsync(path, ("If-None-Match", held));
            Assert.Equal((304, "", tag), (page.Status, page.Body, page.ETag));
            Assert.Equal((PageResult<object>.CacheControl, "Accept, Accept-Language"), (page.CacheControl, page.Vary));
        }

        foreach (var other in (string[])["\"other\"", "nonsense", $"{tag[..^1]}0\""])
        {
            Assert.Equal(200, (await PageAsync(path, ("If-None-Match", other))).Status);
        }
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task A_page_is_in_the_language_asked_for(string path)
    {
        var page = await PageAsync(path, ("Accept-Language", "de-DE, en;q=0.8"));

        Assert.Equal("de", page.Language);
        Assert.Contains("niemals in die Sonne", page.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_changes_elsewhere_in_the_catalogue_expires_nothing_and_what_matters_does()
    {
        const string TelescopePath = "/v1/catalogues/expiry/telescopes/t/recommendation";
        const string ItemPath = "/v1/catalogues/expiry/items/e-12/match?telescope=t";
        await StoreAsync(priceOfUnrelated: 30, priceOfBought: 40);
        string?[] before = [(await PageAsync(TelescopePath)).ETag, (await PageAsync($"{TelescopePath}?budget=100")).ETag, (await PageAsync(ItemPath)).ETag];

        await StoreAsync(priceOfUnrelated: 31, priceOfBought: 40);
        string?[] unrelated = [(await PageAsync(TelescopePath)).ETag, (await PageAsync($"{TelescopePath}?budget=100")).ETag, (await PageAsync(ItemPath)).ETag];
        await StoreAsync(priceOfUnrelated: 31, priceOfBought: 41);
        string?[] bought = [(await PageAsync(TelescopePath)).ETag, (await PageAsync($"{TelescopePath}?budget=100")).ETag, (await PageAsync(ItemPath)).ETag];

        Assert.Equal(before, unrelated);
        Assert.All(before.Zip(bought), pair => Assert.NotEqual(pair.First, pair.Second));
    }

    [Fact]
    public async Task The_same_query_is_solved_once()
    {
        await using var watched = new WatchedService();
        using var client = watched.CreateClient();

        await Page.GetAsync(client, TelescopePage);
        await Page.GetAsync(client, TelescopePage.Replace("budget=100&age=40", "age=40&budget=100", StringComparison.Ordinal));

        Assert.Equal(1, watched.Solves);
    }

    [Theory]
    [InlineData(Shop, Shop, Shop)]
    [InlineData($"https://other.example {Shop}", Shop, Shop)]
    [InlineData("*", Shop, "*")]
    [InlineData("https://other.example", Shop, null)]
    [InlineData("", Shop, null)]
    public async Task Only_pages_of_origins_that_are_configured_may_fetch_them(string configured, string origin, string? allowed)
    {
        await using var watched = new WatchedService(settings: (PageOrigins.Key, configured));
        using var client = watched.CreateClient();

        Assert.Equal(allowed, (await Page.GetAsync(client, TelescopePage, ("Origin", origin))).AllowedOrigin);
        Assert.Equal(allowed, (await Page.GetAsync(client, ItemPage, ("Origin", origin))).AllowedOrigin);
        Assert.Null((await Page.GetAsync(client, "/v1/targets", ("Origin", origin))).AllowedOrigin);
    }

    [Theory]
    [InlineData("shop.example")]
    [InlineData("https://shop.example/page")]
    [InlineData("https://shop.example, https://other.example")]
    public void A_setting_that_is_no_origin_is_refused_at_start(string configured) => Assert.Contains(
        PageOrigins.Key,
        Assert.Throws<InvalidOperationException>(() => new WatchedService(settings: (PageOrigins.Key, configured))).Message,
        StringComparison.Ordinal);

    /// <summary>A catalogue with a telescope, an eyepiece that goes well with it, and one that fits no focuser of its.</summary>
    private async Task StoreAsync(int priceOfUnrelated, int priceOfBought)
    {
        var stored = await service.SendAsync(HttpMethod.Put, "/v1/catalogues/expiry", $$"""
            {
              "currency": "EUR",
              "items": [
                { "id": "e-12", "kind": "eyepiece", "focalLengthMm": 12, "apparentFieldDeg": 60, "eyeReliefMm": 18, "barrel": "1.25in",
                  "price": {{priceOfBought}} },
                { "id": "e-31", "kind": "eyepiece", "focalLengthMm": 31, "apparentFieldDeg": 80, "eyeReliefMm": 18, "barrel": "2in",
                  "price": {{priceOfUnrelated}} } ],
              "telescopes": [ { "id": "t", "name": "T", "apertureMm": 100, "focalLengthMm": 1000, "focuserBarrel": "1.25in" } ]
            }
            """);
        Assert.InRange(stored.Status, 200, 201);
    }

    private async Task<(string? ETag, string Body)> TagAndBodyAsync(string path)
    {
        var page = await PageAsync(path);
        return (page.ETag, page.Body);
    }

    private async Task<Page> PageAsync(string path, params (string Name, string Value)[] headers)
    {
        using var client = service.CreateClient();
        return await Page.GetAsync(client, path, headers);
    }
}
