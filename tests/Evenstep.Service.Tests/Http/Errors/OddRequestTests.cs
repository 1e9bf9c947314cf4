using System.IO.Compression;
using System.Net.Http.Headers;
using System.Text;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Errors;
using Evenstep.Service.Http.Headers;
using Microsoft.AspNetCore.Http;

namespace Evenstep.Service.Tests.Http.Errors;

/// <summary>What integrators and their tools send beside what is usual.</summary>
public sealed class OddRequestTests(Service service) : IClassFixture<Service>
{
    private const string Slashed = """
        { "currency": "EUR",
          "items": [
            { "id": "a/b c%2Fd", "kind": "eyepiece", "focalLengthMm": 10, "apparentFieldDeg": 60, "eyeReliefMm": 15, "barrel": "1.25in", "price": 10 } ],
          "telescopes": [ { "id": "t/1", "apertureMm": 100, "focalLengthMm": 900, "focuserBarrel": "1.25in" } ] }
        """;

    [Theory]
    [InlineData("items/a%2Fb%20c%252Fd/match?telescope=t/1", 200)]
    [InlineData("items/a%2fb%20c%252Fd/match?telescope=t%2F1", 200)]
    [InlineData("items/a%2Fb%20c/match?telescope=t/1", 404)]
    [InlineData("telescopes/t%2F1/recommendation?owned=a/b%20c%252Fd", 200)]
    [InlineData("telescopes/t%2F2/recommendation", 404)]
    public async Task An_id_may_hold_slashes(string path, int status)
    {
        await service.SendAsync(HttpMethod.Put, "/v1/catalogues/slashed", Slashed);

        Assert.Equal(status, (await service.GetAsync($"/v1/catalogues/slashed/{path}")).Status);
    }

    [Theory]
    [InlineData("/v1/recommendations", "application/json")]
    [InlineData("/v1/recommendations/batch", "application/x-ndjson")]
    public async Task A_packed_body_is_refused_with_what_to_do(string address, string type)
    {
        var (answer, accepted) = await PostAsync(address, Packed(Repository.Example("recommendation-shortest")), type, "gzip");

        Assert.Equal((415, "identity"), (answer.Status, accepted));
        Assert.EndsWith("`Content-Encoding: gzip` was given; send the body as it is, without that header.", answer.Problem.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_body_said_to_be_as_it_is_is_taken()
    {
        var body = Encoding.UTF8.GetBytes(Repository.Example("recommendation-shortest"));

        Assert.Equal(200, (await PostAsync("/v1/recommendations", body, "application/json", "identity")).Answer.Status);
    }

    [Fact]
    public async Task A_body_in_another_encoding_is_said_to_be_no_text()
    {
        var (answer, _) = await PostAsync("/v1/recommendations", [.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes("{}")], "application/json", null);

        Assert.EndsWith("the body is not JSON: it is not text in UTF-8.", answer.Problem.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_parameter_given_twice_is_not_said_to_be_missing_too() => Assert.Equal(
        ["telescope duplicate"], (await service.GetAsync("/v1/catalogues/demo/items/kelpstone-5-5/match?telescope=capstan-152&telescope=jetty-112")).Errors);

    [Fact]
    public async Task A_page_of_a_shop_may_ask_whether_an_answer_is_still_the_same()
    {
        const string Shop = "https://shop.example";
        await using var own = new Service(null, (PageOrigins.Key, Shop));
        using var client = own.CreateClient();
        using var asked = new HttpRequestMessage(HttpMethod.Options, new Uri("/v1/catalogues/demo/items/kelpstone-5-5/match", UriKind.Relative));
        asked.Headers.Add("Origin", Shop);
        asked.Headers.Add("Access-Control-Request-Method", "GET");
        asked.Headers.Add("Access-Control-Request-Headers", "if-none-match");

        using var answer = await client.SendAsync(asked);

        Assert.Equal(Shop, Assert.Single(answer.Headers.GetValues("Access-Control-Allow-Origin")));
        Assert.Contains("If-None-Match", string.Join(',', answer.Headers.GetValues("Access-Control-Allow-Headers")), StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_server_cannot_read_is_not_blamed_on_JSON() =>
        Assert.Equal(ProblemKind.InvalidRequest, ErrorPages.ResultOf(new BadHttpRequestException("Bad chunk size data."), null).Kind);

    [Fact]
    public async Task The_document_is_known_again_by_its_tag()
    {
        var tag = (await service.GetAsync("/openapi/v1.json")).ETag!;

        var again = await service.SendAsync(HttpMethod.Get, "/openapi/v1.json", headers: ("If-None-Match", tag));

        Assert.Equal((304, "", tag), (again.Status, again.Body, again.ETag));
    }

    [Fact]
    public async Task A_patch_of_one_item_that_is_no_object_is_not_asked_for_an_id()
    {
        await service.SendAsync(HttpMethod.Put, "/v1/catalogues/slashed", Slashed);

        var answer = await service.SendAsync(HttpMethod.Patch, "/v1/catalogues/slashed/items/a%2Fb%20c%252Fd", "[ 1 ]", "application/merge-patch+json");

        Assert.Equal([" wrong-type"], answer.Errors);
        Assert.DoesNotContain("`id`", answer.Body, StringComparison.Ordinal);
    }

    private static byte[] Packed(string text)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Fastest))
        {
            gzip.Write(Encoding.UTF8.GetBytes(text));
        }

        return packed.ToArray();
    }

    private async Task<(Answer Answer, string Accepted)> PostAsync(string address, byte[] body, string type, string? coding)
    {
        using var content = new ByteArrayContent(body);
        content.Headers.ContentType = new MediaTypeHeaderValue(type);
        if (coding is not null)
        {
            content.Headers.ContentEncoding.Add(coding);
        }

        using var client = service.CreateClient();
        using var response = await client.PostAsync(new Uri(address, UriKind.Relative), content);
        return (await Answer.OfAsync(response), response.Headers.TryGetValues("Accept-Encoding", out var accepted) ? string.Join(", ", accepted) : "");
    }
}
