using System.Text.Json.Nodes;
using Evenstep.Service.Answering.Metrics;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Tests.Answering.Metrics;
using Evenstep.Service.Tests.Answers;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Evenstep.Service.Tests.Answering.Solving;

public sealed class CertifyTests
{
    private static readonly string Body = Certified("recommendation-spectacles");

    [Fact]
    public async Task A_plan_is_certified_if_asked_for()
    {
        await using var service = new WatchedService();

        var answer = await service.RecommendAsync(Body);

        Assert.Equal(200, answer.Status);
        Assert.True(CertifiedOf(answer));
        Assert.Equal(1, service.CountOf(ServiceMeter.Certificates, "agreed"));
    }

    [Fact]
    public async Task A_plan_is_not_certified_unless_asked_for()
    {
        await using var service = new WatchedService(Proving(_ => throw new InvalidOperationException("Not asked for.")));

        var answer = await service.RecommendAsync(Repository.Example("recommendation-spectacles"));

        Assert.Null(CertifiedOf(answer));
    }

    [Fact]
    public async Task That_nothing_is_allowed_is_not_certified()
    {
        await using var service = new WatchedService();

        var answer = await service.RecommendAsync(Certified("recommendation-spectacles", body => body["preferences"]!["mustFrame"]![0]!["widthDeg"] = 19));

        Assert.Equal("infeasible", answer.As<Recommendation>().Outcome);
        Assert.Null(CertifiedOf(answer));
    }

    [Fact]
    public async Task The_work_limit_of_a_certificate_can_be_set_and_leaves_the_answer_as_it_is()
    {
        var limit = 0.0;
        await using var service = new WatchedService(
            Proving(given =>
            {
                limit = given;
                return null;
            }),
            (CertifySettings.LimitKey, "2.5"));

        var answer = await service.RecommendAsync(Body);

        Assert.Equal((200, 2.5), (answer.Status, limit));
        Assert.Null(CertifiedOf(answer));
        Assert.Equal(1, service.CountOf(ServiceMeter.Certificates, "undecided"));
    }

    [Fact]
    public async Task No_answer_is_given_that_the_second_engine_disagrees_with()
    {
        var log = new RecordingLogger<Certificates>();
        await using var service = new WatchedService(services =>
        {
            Proving(_ => false)(services);
            services.AddSingleton<ILogger<Certificates>>(log);
        });

        var answer = await service.RecommendAsync(Body);
        await service.RecommendAsync(Body);

        Assert.Equal((500, "application/problem+json"), (answer.Status, answer.ContentType));
        Assert.Equal(2, service.CountOf(ServiceMeter.Certificates, "disagreed"));
        var (level, message) = log.Entries.First();
        Assert.Equal(LogLevel.Error, level);
        Assert.Contains(Body, message, StringComparison.Ordinal);
        Assert.Matches("Outcome: Optimal.*LeastLargestStep = .*Catalogue: demo, version [0-9a-f]{12}", message);
    }

    [Theory]
    [InlineData(CertifySettings.LimitKey, "0")]
    [InlineData(CertifySettings.LimitKey, "NaN")]
    [InlineData(CertifySettings.ShareKey, "-0.1")]
    [InlineData(CertifySettings.ShareKey, "1.1")]
    [InlineData(CertifySettings.ShareKey, "NaN")]
    public void Settings_out_of_range_stop_the_service_from_starting(string key, string value)
    {
        var exception = Assert.Throws<InvalidOperationException>(() => new WatchedService(null, (key, value)));

        Assert.Contains(key, exception.Message, StringComparison.Ordinal);
    }

    private static Action<IServiceCollection> Proving(Func<double, bool?> prove) =>
        services => services.AddSingleton<SecondProver>((_, _, budget) => prove(budget.UnitsLeft));

    private static string Certified(string example, Action<JsonNode>? change = null)
    {
        var body = JsonNode.Parse(Repository.Example(example))!;
        body["explain"] = new JsonObject { ["certify"] = true };
        change?.Invoke(body);
        return body.ToJsonString();
    }

    private static bool? CertifiedOf(Answer answer) => answer.As<Recommendation>().Solver.Certified;
}
