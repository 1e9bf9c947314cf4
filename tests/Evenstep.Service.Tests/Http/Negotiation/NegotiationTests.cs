using System.Xml.Linq;
using Evenstep.Service.Http.Negotiation;

namespace Evenstep.Service.Tests.Http.Negotiation;

/// <summary>A caller is answered in the form asked for.</summary>
public sealed class NegotiationTests(Service service) : IClassFixture<Service>
{
    private const string Svg = "image/svg+xml";
    private const string Json = "application/json";

    private static readonly string[] TwoHeaders = ["text/html", Svg];

    public static TheoryData<string, string> Routes => new()
    {
        { "/v1/recommendations", "recommendation-spectacles" },
        { "/v1/assessments", "assessment-two-telescopes" },
        { "/v1/second-opinions", Repository.Examples("second-opinion").First() },
    };

    [Theory]
    [InlineData("*/*", Json)]
    [InlineData("", Json)]
    [InlineData("application/*", Json)]
    [InlineData("application/json; charset=utf-8", Json)]
    [InlineData(Svg, Svg)]
    [InlineData("IMAGE/SVG+XML", Svg)]
    [InlineData("image/*", Svg)]
    [InlineData("image/avif,image/webp,image/apng,image/svg+xml,image/*,*/*;q=0.8", Svg)]
    [InlineData("image/svg+xml, */*", Svg)]
    [InlineData("image/svg+xml, application/json", Json)]
    [InlineData("image/svg+xml;q=0.5, application/json;q=0.4", Svg)]
    [InlineData("application/json;q=0, */*", Svg)]
    [InlineData("image/svg+xml;q=0, image/*", null)]
    [InlineData("image/png", null)]
    [InlineData("text/html", null)]
    [InlineData("application/json;q=0", null)]
    [InlineData("not a media type", Json)]
    public void The_form_most_welcome_is_chosen(string accept, string? mediaType) =>
        Assert.Equal(mediaType, OfferedFormats.JsonOrPicture.Choose(accept)?.MediaType);

    [Fact]
    public void Several_headers_are_one() => Assert.Equal(AnswerFormat.Picture, OfferedFormats.JsonOrPicture.Choose(TwoHeaders));

    [Theory]
    [MemberData(nameof(Routes))]
    public async Task The_same_request_gets_JSON_or_a_picture(string path, string example)
    {
        var json = await service.PostAsync(path, Repository.Example(example));
        var picture = await service.PostAsync(path, Repository.Example(example), accept: Svg);
        var again = await service.PostAsync(path, Repository.Example(example));

        Assert.Equal((200, Json, "Accept, Accept-Language"), (json.Status, json.ContentType, json.Vary));
        Assert.Equal((200, Svg, "Accept, Accept-Language"), (picture.Status, picture.ContentType, picture.Vary));
        Assert.Equal("svg", XDocument.Parse(picture.Body).Root!.Name.LocalName);
        Assert.Equal(json.Json.EnumerateObject().Select(one => one.Name), again.Json.EnumerateObject().Select(one => one.Name));
    }

    [Theory]
    [MemberData(nameof(Routes))]
    public async Task A_picture_is_the_same_each_time_and_in_the_language_asked_for(string path, string example)
    {
        var first = await service.PostAsync(path, Repository.Example(example), accept: Svg, language: "de");
        var second = await service.PostAsync(path, Repository.Example(example), accept: Svg, language: "de");

        Assert.Equal("de", first.Language);
        Assert.Equal(first.Body, second.Body);
        Assert.Contains("Vergrößerungsleiter", first.Body, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Routes))]
    public async Task A_caller_that_accepts_neither_is_told_both(string path, string example)
    {
        var answer = await service.PostAsync(path, Repository.Example(example), accept: "image/png");

        Assert.Equal((406, "Accept, Accept-Language"), (answer.Status, answer.Vary));
        Assert.Contains("`Accept: image/png` was given; the answer is application/json or image/svg+xml.", answer.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_fault_is_written_in_JSON_where_a_picture_is_wanted() =>
        Assert.Equal((400, "application/problem+json"), await StatusOf("{}"));

    private async Task<(int, string?)> StatusOf(string body)
    {
        var answer = await service.PostAsync("/v1/recommendations", body, accept: Svg);
        return (answer.Status, answer.ContentType);
    }
}
