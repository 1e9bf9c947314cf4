namespace Evenstep.Service.Tests.Contract.Fields;

public sealed class RefusalTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/recommendations";

    [Fact]
    public async Task What_is_missing_is_named()
    {
        var answer = await service.PostAsync(Path, "{}");

        Assert.Equal((400, "application/problem+json"), (answer.Status, answer.ContentType));
        Assert.Equal(["/telescopes missing", "/catalogue missing", "/limits missing"], answer.Errors);
    }

    [Fact]
    public async Task All_faults_of_a_body_are_named_at_once()
    {
        var answer = await service.PostAsync(Path, """
            {
              "telescopes": [ { "apertureMm": 5000, "focalLengthMm": "long", "focuserBarrel": "2 in", "colour": "red" }, null ],
              "observer": { "age": 1e400 },
              "catalogue": { "currency": "EUR", "items": [
                { "id": "a", "kind": "barlow", "factors": [2, 2], "barrel": "2in", "price": 1 },
                { "id": "a", "kind": "zoom", "shortestFocalLengthMm": 24, "longestFocalLengthMm": 8, "apparentFieldAtShortestDeg": 60,
                  "apparentFieldAtLongestDeg": 40, "eyeReliefMm": 15, "barrel": "1.25in", "price": 9.999 } ] },
              "limits": { "budget": 1, "budget": 2 },
              "preferences": { "mustInclude": ["b"] },
              "explain": { "targets": "all" }
            }
            """);

        Assert.Equal(400, answer.Status);
        Assert.Equal(
            [
                "/catalogue/items/0/factors/1 duplicate", "/catalogue/items/1/id duplicate", "/catalogue/items/1/price too-many-decimals",
                "/catalogue/items/1/shortestFocalLengthMm empty-range",
                "/explain/targets wrong-type", "/limits/budget duplicate", "/observer/age out-of-range", "/preferences/mustInclude/0 unknown-item",
                "/telescopes/0/apertureMm out-of-range", "/telescopes/0/colour unknown-field", "/telescopes/0/focalLengthMm wrong-type",
                "/telescopes/0/focuserBarrel not-one-of", "/telescopes/1 wrong-type",
            ],
            answer.Errors.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_misspelt_field_is_answered_with_the_name_that_was_meant()
    {
        var answer = await service.PostAsync(Path, """{ "limits": { "budgte": 1 } }""");

        Assert.Contains("`budget`", answer.Problem.Errors!["/limits/budgte"][0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_empty_power_range_names_both_ends_and_what_sets_them()
    {
        var answer = await service.PostAsync("/v1/assessments", """
            { "telescopes": [ { "apertureMm": 203, "focalLengthMm": 1218, "focuserBarrel": "2in" } ], "site": { "seeingArcsec": 8 } }
            """);

        Assert.Equal(["/telescopes/0 empty-range"], answer.Errors);
        Assert.Contains("33.8x (set by the observer's pupil: `age` or `pupilMm`) to 37.5x (set by `seeingArcsec`)", answer.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task More_faults_than_a_hundred_are_counted()
    {
        var body = $$"""{ {{string.Join(',', Enumerable.Range(0, 150).Select(i => $"\"x{i}\":0"))}} }""";

        var answer = await service.PostAsync(Path, body);

        Assert.Equal(100, answer.Errors.Length);
        Assert.Equal(53, answer.Problem.MoreErrors);
    }

    [Theory]
    [InlineData("""{ "a": "\ud800" }""", "/a unknown-field")]
    [InlineData("""{ "\ud800": 1 }""", " invalid-text")]
    [InlineData("""{ "telescopes": [ { "name": "\ud800" } ] }""", "/telescopes/0/name invalid-text")]
    [InlineData("""{ "telescopes": [ { "\ud800": 1 } ] }""", "/telescopes/0 invalid-text")]
    [InlineData("""{ "owned": [ { "\ud800": 1 } ] }""", "/owned/0/kind missing")]
    [InlineData("""{ "catalogue": { "\ud800": 1 } }""", "/catalogue invalid-text")]
    public async Task Half_a_surrogate_pair_is_refused(string body, string error)
    {
        Assert.Contains(error, (await service.PostAsync(Path, body)).Errors);
    }

    [Fact]
    public async Task A_byte_order_mark_is_ignored()
    {
        Assert.Equal("/problems/invalid-request", TypeOf(await service.PostAsync(Path, "\uFEFF{}")));
    }

    [Theory]
    [InlineData("", 400, "/problems/invalid-json")]
    [InlineData("{", 400, "/problems/invalid-json")]
    [InlineData("{ \"a\": 1, }", 400, "/problems/invalid-json")]
    [InlineData("[]", 400, "/problems/invalid-request")]
    [InlineData("""{ "catalogue": { "id": "nowhere" }, "telescopes": [ { "id": "x" } ], "limits": { "budget": 1 } }""", 404, "/problems/not-found")]
    [InlineData("""{ "catalogue": { "id": "demo" }, "telescopes": [ { "id": "x" } ], "limits": { "budget": 1 } }""", 404, "/problems/not-found")]
    public async Task Bodies_that_cannot_be_read_or_name_what_does_not_exist_are_refused(string body, int status, string type)
    {
        var answer = await service.PostAsync(Path, body);

        Assert.Equal((status, type), (answer.Status, TypeOf(answer)));
    }

    [Fact]
    public async Task Great_depth_is_refused()
    {
        var answer = await service.PostAsync(Path, new string('[', 100_000));

        Assert.Contains("levels deep", answer.Problem.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_body_over_the_limit_is_refused()
    {
        Assert.Equal(413, (await service.PostAsync(Path, new string(' ', 3_000_000))).Status);
    }

    [Fact]
    public async Task A_content_type_other_than_JSON_is_refused()
    {
        Assert.Equal("/problems/unsupported-media-type", TypeOf(await service.PostAsync(Path, "{}", "text/plain")));
        Assert.Equal("/problems/unsupported-media-type", TypeOf(await service.PostAsync(Path, "{}", "application/json; charset=utf-16")));
    }

    [Theory]
    [InlineData("application/json", 400)]
    [InlineData("text/html, */*;q=0.1", 400)]
    [InlineData("image/png", 406)]
    [InlineData("application/json;q=0, image/svg+xml;q=0, */*", 406)]
    public async Task A_request_that_accepts_no_media_type_of_the_answer_is_refused(string accept, int status)
    {
        Assert.Equal(status, (await service.PostAsync(Path, "{}", accept: accept)).Status);
    }

    [Fact]
    public async Task Unknown_routes_and_methods_are_problems_too()
    {
        Assert.Equal("/problems/not-found", TypeOf(await service.GetAsync("/v1/nothing")));
        Assert.Equal("/problems/method-not-allowed", TypeOf(await service.GetAsync(Path)));
    }

    private static string? TypeOf(Answer answer) => answer.Problem.Type;
}
