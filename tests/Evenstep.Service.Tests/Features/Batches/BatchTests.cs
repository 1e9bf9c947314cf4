using System.Text.RegularExpressions;
using Evenstep.Service.Answering.Metrics;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Features.Batches;
using Evenstep.Service.Tests.Answering.Metrics;
using Evenstep.Service.Tests.Answering.Solving;
using Evenstep.Service.Tests.Answers;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Evenstep.Service.Tests.Features.Batches;

/// <summary>What a batch is answered; how the two sides talk at the same time is tested in <see cref="DuplexTests"/>.</summary>
public sealed partial class BatchTests(Service service) : IClassFixture<Service>
{
    [Fact]
    public async Task Every_line_is_answered_in_the_order_received_under_its_id()
    {
        var lines = Enumerable.Range(0, 60).Select(i => i % 7 == 3 ? $$"""{ "id": "line {{i}}" }""" : Batch.LineOfItsOwn($"line {i}", i % 20));

        var answers = await LinesAsync(string.Join('\n', lines));

        Assert.Equal(Enumerable.Range(0, 60).Select(i => $"line {i}"), answers.Select(answer => answer.Id));
        Assert.All(answers.Index(), one => Assert.NotNull(one.Index % 7 == 3 ? one.Item.Problem : one.Item.Recommendation));
    }

    [Theory]
    [InlineData("recommendation-shortest")]
    [InlineData("recommendation-spectacles")]
    [InlineData("recommendation-own-catalogue")]
    public async Task An_answer_is_the_same_to_the_byte_as_that_of_the_request_alone(string example)
    {
        foreach (var language in (string[])["en", "de"])
        {
            var alone = await service.PostAsync("/v1/recommendations", Repository.Example(example), language: language);
            var batch = await service.PostAsync(Batch.Path, Batch.Line("a", example), Batch.MediaType, language: language);

            Assert.Equal((200, Batch.MediaType, language), (batch.Status, batch.ContentType, batch.Language));
            Assert.Equal($$"""{"id":"a","recommendation":{{Timeless(alone.Body)}}}""", Timeless(batch.Body).TrimEnd('\n'));
        }
    }

    [Fact]
    public async Task A_faulty_line_is_refused_with_all_its_faults_and_the_others_are_answered()
    {
        var answers = await LinesAsync(
            Batch.Line("good"),
            """{ "id": "bad", "telescopes": [ { "apertureMm": 1, "focalLengthMm": 1218, "focuserBarrel": "2in" } ],""" +
            """ "catalogue": { "id": "demo" }, "limits": { "budgte": 1 } }""",
            Batch.Line("good too"));

        Assert.Equal(["good", "bad", "good too"], answers.Select(answer => answer.Id));
        Assert.Equal(400, answers[1].Problem!.Status);
        Assert.Equal(["/telescopes/0/apertureMm", "/limits/budgte", "/limits/budget"], answers[1].Problem!.Errors!.Keys);
    }

    [Theory]
    [InlineData("no JSON", "/problems/invalid-json", null)]
    [InlineData("""{ "id": "a", "telescopes": [ }""", "/problems/invalid-json", null)]
    [InlineData("[]", "/problems/invalid-request", "")]
    [InlineData(
        """{ "telescopes": [ { "id": "jetty-112" } ], "catalogue": { "id": "demo" }, "limits": { "budget": 1 } }""", "/problems/invalid-request", "/id")]
    [InlineData(
        """{ "id": 7, "telescopes": [ { "id": "jetty-112" } ], "catalogue": { "id": "demo" }, "limits": { "budget": 1 } }""",
        "/problems/invalid-request", "/id")]
    [InlineData(
        """{ "id": "", "telescopes": [ { "id": "jetty-112" } ], "catalogue": { "id": "demo" }, "limits": { "budget": 1 } }""",
        "/problems/invalid-request", "/id")]
    public async Task A_line_that_cannot_be_told_by_an_id_is_told_by_its_number(string line, string type, string? place)
    {
        var answers = await LinesAsync(Batch.Line("good"), "", line);

        var answer = answers[1];
        Assert.Equal((null, 3), (answer.Id, answer.Line));
        Assert.Equal(type, answer.Problem!.Type);
        Assert.Equal(place, answer.Problem.Errors?.Keys.Single());
    }

    [Fact]
    public async Task An_id_may_have_a_hundred_characters_and_is_given_once()
    {
        var most = new string('x', 100);
        var twice = Batch.Line("a").Replace("\"catalogue\"", "\"id\":\"b\",\"catalogue\"", StringComparison.Ordinal);

        var answers = await LinesAsync(Batch.Line(most), Batch.Line(most + "x"), twice);

        Assert.Equal(most, answers[0].Id);
        Assert.Equal("too-long", CodeAt(answers[1], "/id"));
        Assert.Equal("duplicate", CodeAt(answers[2], "/id"));
    }

    [Fact]
    public async Task What_does_not_exist_is_not_found_in_a_line_either()
    {
        var answers = await LinesAsync(Batch.Line("a").Replace("\"demo\"", "\"none\"", StringComparison.Ordinal));

        Assert.Equal(404, answers[0].Problem!.Status);
    }

    [Fact]
    public async Task A_line_may_have_two_MiB_and_the_body_more()
    {
        const int mostBytes = 2 * 1024 * 1024;

        var answers = await LinesAsync(
            Batch.Line("a").PadRight(mostBytes), Batch.Line("b").PadRight(mostBytes + 1), Batch.Line("c").PadRight(mostBytes), Batch.Line("d"));

        Assert.Equal(["a", null, "c", "d"], answers.Select(answer => answer.Id));
        Assert.Equal(413, answers[1].Problem!.Status);
    }

    [Theory]
    [InlineData("application/json", "*/*", 415)]
    [InlineData(null, "*/*", 415)]
    [InlineData("application/x-ndjson; charset=latin1", "*/*", 415)]
    [InlineData(Batch.MediaType, "application/json", 406)]
    [InlineData(Batch.MediaType, "application/x-ndjson", 200)]
    [InlineData("application/x-ndjson; charset=utf-8", "application/*", 200)]
    public async Task A_batch_is_newline_delimited_both_ways(string? contentType, string accept, int status) =>
        Assert.Equal(status, (await service.PostAsync(Batch.Path, Batch.Line("a"), contentType, accept)).Status);

    [Fact]
    public async Task Nothing_is_answered_to_nothing() => Assert.Empty(await LinesAsync("", " "));

    [Fact]
    public async Task A_request_alone_and_a_line_share_what_is_kept()
    {
        await using var watched = new WatchedService();
        var body = Batch.Line("a");

        await watched.RecommendAsync(body.Replace("\"id\":\"a\",", "", StringComparison.Ordinal));
        await watched.PostAsync(Batch.Path, $"{body}\n{Batch.Line("b")}", Batch.MediaType);

        Assert.Equal(1, watched.Solves);
        Assert.Equal((2, 3), (watched.CountOf(ServiceMeter.Lookups, "hit"), watched.CountOf(ServiceMeter.Answers, "optimal")));
    }

    [Fact]
    public async Task An_unexpected_exception_fails_one_line_and_is_logged()
    {
        var log = new RecordingLogger<BatchLineHandler>();
        await using var watched = new WatchedService(services =>
        {
            services.AddSingleton<SecondProver>((_, _, _) => throw new InvalidOperationException("A test fails."));
            services.AddSingleton<ILogger<BatchLineHandler>>(log);
        });
        var unlucky = Batch.Line("unlucky").Replace("\"limits\"", "\"explain\":{\"certify\":true},\"limits\"", StringComparison.Ordinal);

        var answer = await watched.PostAsync(Batch.Path, $"{unlucky}\n{Batch.Line("lucky")}", Batch.MediaType);

        var lines = Batch.LinesOf(answer.Body);
        Assert.Equal(("unlucky", 500), (lines[0].Id, lines[0].Problem!.Status));
        Assert.NotNull(lines[1].Recommendation);
        Assert.Equal("Line 1 of a batch could not be answered.", Assert.Single(log.Entries).Message);
    }

    private static string? CodeAt(LineAnswer answer, string place) => answer.Problem!.Errors![place][0].Code;

    private static string Timeless(string body) => Milliseconds().Replace(body, "\"milliseconds\":0");

    private async Task<LineAnswer[]> LinesAsync(params string[] lines)
    {
        var answer = await service.PostAsync(Batch.Path, string.Join('\n', lines), Batch.MediaType);
        Assert.Equal(200, answer.Status);
        return Batch.LinesOf(answer.Body);
    }

    [GeneratedRegex("\"milliseconds\":[0-9.]+")]
    private static partial Regex Milliseconds();
}
