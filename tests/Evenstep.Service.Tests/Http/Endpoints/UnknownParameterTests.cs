using Evenstep.Service.Tests.Http.OpenApi;

namespace Evenstep.Service.Tests.Http.Endpoints;

/// <summary>A misspelt parameter is never ignored in silence.</summary>
public sealed class UnknownParameterTests(Service service) : IClassFixture<Service>
{
    public static TheoryData<string> Operations => [.. Operation.OfInterface.Select(operation => operation.ToString())];

    [Theory]
    [MemberData(nameof(Operations))]
    public async Task Every_operation_refuses_a_parameter_that_it_does_not_know(string name)
    {
        var operation = Operation.OfInterface.Single(one => one.ToString() == name);
        await service.SendAsync(HttpMethod.Put, $"/v1/catalogues/{Operation.Stored}", Repository.Example("catalogue-small-shop"));

        var answer = await service.SendAsync(new HttpMethod(operation.Method), operation.AddressWith("nonsense=1"), BodyFor(operation), TypeFor(operation));

        Assert.Equal((400, "application/problem+json"), (answer.Status, answer.ContentType));
        Assert.Contains("nonsense unknown-field", answer.Errors);
    }

    [Theory]
    [InlineData("/v1/targets?limit=3", "None are taken")]
    [InlineData("/v1/catalogues?limits=3", "Did you mean `limit`?")]
    [InlineData("/v1/catalogues?Limit=3", "Did you mean `limit`?")]
    [InlineData("/v1/catalogues?offset=3", "Known are `limit`, `cursor`")]
    [InlineData("/v1/catalogues/demo?form=csv", "None are taken")]
    [InlineData("/v1/catalogues/demo/telescopes/capstan-152/recommendation?budgte=3", "Did you mean `budget`?")]
    public async Task The_refusal_says_what_to_give_instead(string address, string advice)
    {
        var answer = await service.GetAsync(address);

        Assert.Equal(400, answer.Status);
        Assert.Contains(advice, answer.Problem.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_answer_that_is_kept_is_no_excuse()
    {
        var body = Repository.Example("recommendation-shortest");

        Assert.Equal(200, (await service.PostAsync("/v1/recommendations", body)).Status);
        Assert.Equal(["explain unknown-field"], (await service.PostAsync("/v1/recommendations?explain=1", body)).Errors);
    }

    [Theory]
    [InlineData("/health/live?probe=1")]
    [InlineData("/openapi/v1.json?v=2")]
    [InlineData("/metrics?name=x")]
    [InlineData("/?campaign=x")]
    public async Task What_is_asked_for_by_machines_and_by_links_takes_no_notice(string address) =>
        Assert.Equal(200, (await service.GetAsync(address)).Status);

    /// <summary>None that a store would keep: what is to be refused must not depend on the body.</summary>
    private static string? BodyFor(Operation operation) =>
        operation.Method is "GET" or "DELETE" ? null : operation.Method == "PUT" ? """{ "currency": "EUR", "items": [] }""" : "{}";

    private static string TypeFor(Operation operation) => operation switch
    {
        { Path: var path } when path.EndsWith("/batch", StringComparison.Ordinal) || path.EndsWith("/items", StringComparison.Ordinal) =>
            "application/x-ndjson",
        { Method: "PATCH" } => "application/merge-patch+json",
        _ => "application/json",
    };
}
