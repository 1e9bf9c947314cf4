using System.Net;
using Evenstep.Service.Contract.Headers;
using Evenstep.Service.Http.Authentication;
using Evenstep.Service.Tests.Answers;
using Evenstep.Service.Tests.Catalogues;
using Evenstep.Service.Tests.Features.Batches;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;

namespace Evenstep.Service.Tests.Http.Authentication;

/// <summary>Who is let in, and as whom.</summary>
public sealed class KeyTests
{
    private const string Recommendations = "/v1/recommendations";
    private const string Catalogue = "/v1/catalogues/wares";

    private static readonly string Body = Repository.Example("recommendation-shortest");
    private static readonly Keyed Shop = new("shop", "shop");
    private static readonly Keyed Reader = new("reader", "shop") { Scopes = "read" };
    private static readonly Keyed Rival = new("rival", "rival");

    [Theory]
    [InlineData(null, "Bearer")]
    [InlineData("Bearer", "Bearer")]
    [InlineData("Bearer ", "Bearer")]
    [InlineData("Basic evenstep_test-shop", "Bearer")]
    [InlineData("evenstep_test-shop", "Bearer")]
    [InlineData("Bearer evenstep_test-shop2", "Bearer error=\"invalid_token\"")]
    [InlineData("Bearer evenstep_test-sho", "Bearer error=\"invalid_token\"")]
    [InlineData("bearer evenstep_test-shop", null)]
    [InlineData("Bearer evenstep_test-shop", null)]
    public async Task Where_there_are_keys_one_is_needed(string? authorization, string? challenge)
    {
        await using var service = Keyed.ServiceWith(Shop);

        (HttpMethod, string)[] routes =
            [(HttpMethod.Post, Recommendations), (HttpMethod.Get, "/v1/catalogues"), (HttpMethod.Get, "/v1/nothing"), (HttpMethod.Get, "/metrics")];
        foreach (var (method, path) in routes)
        {
            using var request = new HttpRequestMessage(method, path);
            request.Content = method == HttpMethod.Post ? new StringContent(Body, System.Text.Encoding.UTF8, "application/json") : null;
            request.Headers.TryAddWithoutValidation("Authorization", authorization);
            using var client = service.CreateClient();
            using var response = await client.SendAsync(request);

            Assert.Equal(challenge, response.Headers.TryGetValues("WWW-Authenticate", out var given) ? given.Single() : null);
            Assert.Equal(challenge is not null, response.StatusCode == HttpStatusCode.Unauthorized);
            Assert.Contains("Authorization", response.Headers.Vary);
        }
    }

    [Theory]
    [InlineData("/health/live")]
    [InlineData("/openapi/v1.json")]
    [InlineData("/swagger/index.html")]
    [InlineData("/")]
    public async Task What_tells_of_the_service_is_open_to_everybody(string path)
    {
        await using var service = Keyed.ServiceWith(Shop);

        Assert.Equal(200, (await service.GetAsync(path)).Status);
    }

    [Fact]
    public async Task A_key_that_may_only_read_changes_nothing()
    {
        await using var service = Keyed.ServiceWith(Shop, Reader);

        Assert.Equal(403, (await service.SendAsync(HttpMethod.Put, Catalogue, Wares.Json(), headers: Reader.Header)).Status);
        Assert.Equal(201, (await service.SendAsync(HttpMethod.Put, Catalogue, Wares.Json(), headers: Shop.Header)).Status);
        Assert.Equal(200, (await service.SendAsync(HttpMethod.Get, Catalogue, headers: Reader.Header)).Status);
        Assert.Equal(200, (await service.SendAsync(HttpMethod.Post, Recommendations, Body, headers: Reader.Header)).Status);
        Assert.Equal(403, (await service.SendAsync(HttpMethod.Delete, Catalogue, headers: Reader.Header)).Status);
        Assert.Equal(403, (await service.SendAsync(HttpMethod.Patch, $"{Catalogue}/items/x", "{}", headers: Reader.Header)).Status);
    }

    [Fact]
    public async Task A_key_that_may_only_write_is_told_what_it_lacks()
    {
        await using var service = Keyed.ServiceWith(Shop with { Scopes = "write" });

        var refused = await service.SendAsync(HttpMethod.Get, "/v1/catalogues", headers: Shop.Header);

        Assert.Equal((403, "/problems/forbidden"), (refused.Status, refused.Problem.Type));
        Assert.Contains("`write`", refused.Problem.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_owners_catalogue_is_not_there()
    {
        await using var service = Keyed.ServiceWith(Shop, Rival);
        await service.SendAsync(HttpMethod.Put, Catalogue, Wares.Json(), headers: Shop.Header);
        var request = Body.Replace("\"demo\"", "\"wares\"", StringComparison.Ordinal);

        var refusals = new[]
        {
            await service.SendAsync(HttpMethod.Get, Catalogue, headers: Rival.Header),
            await service.SendAsync(HttpMethod.Delete, Catalogue, headers: Rival.Header),
            await service.SendAsync(HttpMethod.Post, Recommendations, request, headers: Rival.Header),
        };

        Assert.Equal(200, (await service.SendAsync(HttpMethod.Get, Catalogue, headers: Shop.Header)).Status);
        Assert.All(refusals, refusal => Assert.Equal(404, refusal.Status));
        Assert.All(refusals, refusal => Assert.Contains("Stored are `demo`.", refusal.Body, StringComparison.Ordinal));
        Assert.Equal("demo", ListedIds(await service.SendAsync(HttpMethod.Get, "/v1/catalogues", headers: Rival.Header)));
        Assert.Equal("demo wares", ListedIds(await service.SendAsync(HttpMethod.Get, "/v1/catalogues", headers: Shop.Header)));
    }

    [Fact]
    public async Task Two_owners_may_have_a_catalogue_of_one_id_and_each_gets_answers_from_its_own()
    {
        await using var service = Keyed.ServiceWith(Shop, Rival);
        await service.SendAsync(HttpMethod.Put, Catalogue, Repository.Example("catalogue-small-shop"), headers: Shop.Header);
        await service.SendAsync(HttpMethod.Put, Catalogue, """{ "currency": "EUR", "items": [] }""", headers: Rival.Header);
        var request = Body.Replace("\"demo\"", "\"wares\"", StringComparison.Ordinal);

        var shops = await service.SendAsync(HttpMethod.Post, Recommendations, request, headers: Shop.Header);
        var rivals = await service.SendAsync(HttpMethod.Post, Recommendations, request, headers: Rival.Header);
        var rivalsBatch = await service.SendAsync(
            HttpMethod.Post, Batch.Path, Batch.Line("a").Replace("\"demo\"", "\"wares\"", StringComparison.Ordinal), Batch.MediaType, Rival.Header);

        Assert.Equal((200, 200), (shops.Status, rivals.Status));
        Assert.NotEqual(0, shops.As<Recommendation>().CountsOfExcluded().Count + shops.As<Recommendation>().Purchases.Count);
        Assert.Empty(rivals.As<Recommendation>().Purchases);
        Assert.Empty(Batch.LinesOf(rivalsBatch.Body).Single().Recommendation!.Purchases);
    }

    [Fact]
    public async Task A_key_is_used_up_after_as_many_requests_as_its_rate_and_other_keys_are_not()
    {
        await using var service = Keyed.ServiceWith(Shop with { Rate = 3 }, Rival with { Rate = 1000 });

        var answers = new List<HttpResponseMessage>();
        using var client = service.CreateClient();
        client.DefaultRequestHeaders.Add("Authorization", Shop.Header.Value);
        for (var i = 0; i < 4; i++)
        {
            answers.Add(await client.GetAsync(new Uri("/v1/catalogues", UriKind.Relative)));
        }

        Assert.Equal([200, 200, 200, 429], answers.Select(answer => (int)answer.StatusCode));
        Assert.All(answers, answer => Assert.Equal("\"key\";q=3;w=60", answer.Headers.GetValues(AnswerHeader.RateLimitPolicy.Name).Single()));
        Assert.Equal(
            ["\"key\";r=2;t=20", "\"key\";r=1;t=40", "\"key\";r=0;t=60", "\"key\";r=0;t=60"],
            answers.Select(answer => answer.Headers.GetValues(AnswerHeader.RateLimit.Name).Single()));
        Assert.InRange(answers[3].Headers.RetryAfter!.Delta!.Value.TotalSeconds, 1, 20);
        Assert.Equal(200, (await service.SendAsync(HttpMethod.Get, "/v1/catalogues", headers: Rival.Header)).Status);
        answers.ForEach(answer => answer.Dispose());
    }

    [Fact]
    public async Task An_unknown_key_uses_nothing_up()
    {
        await using var service = Keyed.ServiceWith(Shop with { Rate = 1 });
        for (var i = 0; i < 5; i++)
        {
            Assert.Equal(401, (await service.SendAsync(HttpMethod.Get, "/v1/catalogues", headers: ("Authorization", "Bearer evenstep_test-sho"))).Status);
        }

        Assert.Equal(200, (await service.SendAsync(HttpMethod.Get, "/v1/catalogues", headers: Shop.Header)).Status);
    }

    [Fact]
    public async Task The_lines_of_a_batch_wait_for_the_rate_and_are_not_refused()
    {
        const int lines = 4;
        await using var service = Keyed.ServiceWith(Shop with { Rate = 60 });
        var rate = service.Services.GetRequiredService<KeyRing>().Find(Shop.Text)!.Rate!;
        while (rate.Left > 1)
        {
            rate.Use();
        }

        var batch = await service.SendAsync(
            HttpMethod.Post, Batch.Path, string.Join('\n', Enumerable.Range(0, lines).Select(i => Batch.Line($"{i}"))), Batch.MediaType, Shop.Header);

        // One a second: none is refused, and none is answered that the rate has no room for.
        Assert.InRange(rate.Left, 0, 1);
        Assert.Equal(lines, Batch.LinesOf(batch.Body).Count(line => line.Recommendation is not null));
    }

    [Theory]
    [InlineData("127.0.0.1", "", 200)]
    [InlineData("::1", "", 200)]
    [InlineData("::ffff:127.0.0.1", "", 200)]
    [InlineData("192.0.2.7", "", 403)]
    [InlineData("::ffff:192.0.2.7", "", 403)]
    [InlineData("2001:db8::7", "loopback", 403)]
    [InlineData("2001:db8::7", "everywhere", 200)]
    public async Task Without_keys_only_callers_on_the_same_machine_are_answered(string address, string openTo, int status)
    {
        await using var service = new Service(null, (KeySetup.OpenToKey, openTo));
        await using var seenFrom = service.WithWebHostBuilder(host => host.ConfigureTestServices(
            services => services.AddSingleton<IStartupFilter>(new From(IPAddress.Parse(address)))));
        using var client = seenFrom.CreateClient();

        Assert.Equal(status, (int)(await client.GetAsync(new Uri("/v1/targets", UriKind.Relative))).StatusCode);
        Assert.Equal(status, (int)(await client.GetAsync(new Uri("/metrics", UriKind.Relative))).StatusCode);
        Assert.Equal(200, (int)(await client.GetAsync(new Uri("/health/live", UriKind.Relative))).StatusCode);
    }

    [Theory]
    [InlineData("localhost", "", 200)]
    [InlineData("LOCALHOST:5080", "", 200)]
    [InlineData("127.0.0.1:5080", "", 200)]
    [InlineData("127.8.9.10", "", 200)]
    [InlineData("[::1]:5080", "", 200)]
    [InlineData("[::ffff:127.0.0.1]", "", 200)]
    [InlineData("rebound.example", "", 403)]
    [InlineData("rebound.example:5080", "loopback", 403)]
    [InlineData("localhost.rebound.example", "", 403)]
    [InlineData("127.0.0.1.rebound.example", "", 403)]
    [InlineData("192.0.2.7", "", 403)]
    [InlineData("0.0.0.0", "", 403)]
    [InlineData("[2001:db8::7]", "", 403)]
    [InlineData("rebound.example", "everywhere", 200)]
    public async Task Without_keys_the_service_answers_only_to_a_name_of_its_own_machine(string host, string openTo, int status)
    {
        await using var service = new Service(null, (KeySetup.OpenToKey, openTo));

        var answer = await service.SendAsync(HttpMethod.Get, "/v1/targets", headers: ("Host", host));

        Assert.Equal(status, answer.Status);
        Assert.Equal(status, (await service.SendAsync(HttpMethod.Get, "/metrics", headers: ("Host", host))).Status);
        Assert.Equal(200, (await service.SendAsync(HttpMethod.Get, "/health/live", headers: ("Host", host))).Status);
        if (status == 403)
        {
            var detail = answer.Problem.Detail;
            Assert.Contains($"The request's `Host` is \"{host}\".", detail, StringComparison.Ordinal);
            Assert.Contains("`Evenstep:OpenTo` to `everywhere`", detail, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task With_keys_any_name_will_do()
    {
        await using var service = Keyed.ServiceWith(Shop);

        Assert.Equal(200, (await service.SendAsync(HttpMethod.Get, "/v1/targets", null, "application/json", Shop.Header, ("Host", "shop.example"))).Status);
    }

    [Fact]
    public async Task A_key_is_ignored_where_none_is_needed()
    {
        await using var service = new Service();

        Assert.Equal(200, (await service.SendAsync(HttpMethod.Post, Recommendations, Body, headers: Shop.Header)).Status);
    }

    private static string ListedIds(Answer answer) =>
        string.Join(' ', answer.As<CatalogueList>().Catalogues.Select(one => one.Id));

    /// <summary>Has requests come from an address.</summary>
    private sealed class From(IPAddress address) : IStartupFilter
    {
        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
        {
            app.Use((context, rest) =>
            {
                context.Connection.RemoteIpAddress = address;
                return rest(context);
            });
            next(app);
        };
    }
}
