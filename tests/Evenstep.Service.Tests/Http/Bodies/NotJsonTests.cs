namespace Evenstep.Service.Tests.Http.Bodies;

/// <summary>Whoever sends what is not JSON hears what was found, where, and what belongs there.</summary>
public sealed class NotJsonTests(Service service) : IClassFixture<Service>
{
    private const string Lines = "application/x-ndjson";

    [Theory]
    [InlineData("foo=1&bar=2", "At line 1, byte 2, the body is not JSON: it begins with \"foo=1&bar=2\". Send a JSON object, which stands in braces.")]
    [InlineData("\n <html>", "At line 2, byte 2, the body is not JSON: it begins with \"<html>\". Send a JSON object, which stands in braces.")]
    [InlineData(
        "{\n \"limits\": nothing }",
        "At line 2, byte 13, the body is not JSON: \"nothing\" was found. A value is a text in quotation marks, a number such as 0.5, true, false, null, " +
        "a list or an object.")]
    [InlineData(
        "{ \"a\": True }",
        "At line 1, byte 8, the body is not JSON: \"True\" was found. A value is a text in quotation marks, a number such as 0.5, true, false, null, " +
        "a list or an object.")]
    [InlineData(
        "{ \"a\": .5 }",
        "At line 1, byte 8, the body is not JSON: \".5\" was found. A value is a text in quotation marks, a number such as 0.5, true, false, null, " +
        "a list or an object.")]
    [InlineData("{ \"a\": { \"b\": 5", "At line 1, byte 16, the body is not JSON: it ends before it is complete. Something that was opened is not closed.")]
    [InlineData("{ \"a\": \"b", "At line 1, byte 10, the body is not JSON: it ends before it is complete. Something that was opened is not closed.")]
    [InlineData("{ \"a\": 1, }", "At line 1, byte 11, the body is not JSON: The JSON object contains a trailing comma at the end.")]
    [InlineData("{} {}", "At line 1, byte 4, the body is not JSON: '{' is invalid after a single JSON value. Expected end of data.")]
    [InlineData("", "The body is empty; send a JSON object.")]
    public async Task A_body(string body, string detail) =>
        Assert.Equal(detail, (await service.PostAsync("/v1/recommendations", body)).Problem.Detail);

    [Fact]
    public async Task A_line_of_a_feed()
    {
        const string Path = "/v1/catalogues/feed-shop/items";
        await service.SendAsync(HttpMethod.Put, "/v1/catalogues/feed-shop", Repository.Example("catalogue-small-shop"));

        var answer = await service.SendAsync(
            HttpMethod.Patch, Path, "{ \"id\": \"gullwing-15\", \"price\": 1 }\nfirst-15, 69\n[ 1 ]\n{ \"id\": \"gullwing-5\", \"price\": free }", Lines);

        var errors = answer.Problem.Errors!.ToDictionary(at => at.Key, at => at.Value[0].Message);
        Assert.Equal(
            new Dictionary<string, string>
            {
                ["/line/2"] =
                    "Line 2 is not JSON: it begins with \"first-15\". Send a JSON object, which stands in braces. Every line must be a JSON object of its own.",
                ["/line/3"] = "A list was given; it must be an object with the `id` of an item and the fields that change.",
                ["/line/4"] =
                    "Line 4 is not JSON: \"free\" was found. A value is a text in quotation marks, a number such as 0.5, true, false, null, " +
                    "a list or an object. Every line must be a JSON object of its own.",
            },
            errors);
    }

    [Fact]
    public async Task A_line_of_a_batch()
    {
        var answer = await service.PostAsync("/v1/recommendations/batch", "\nfoo\n", Lines);

        Assert.Contains(
            "At line 2, byte 2, the line is not JSON: it begins with \\\"foo\\\". Send a JSON object, which stands in braces.", answer.Body,
            StringComparison.Ordinal);
    }
}
