using Evenstep.Service.Tests.Http.OpenApi;

namespace Evenstep.Service.Tests.Http.Negotiation;

/// <summary>Whoever accepts no form of the answer is turned away, wherever there is an answer to take a form.</summary>
public sealed class AcceptTests(Service service) : IClassFixture<Service>
{
    public static TheoryData<string> Operations =>
        [.. Operation.OfInterface.Where(operation => operation.Method != "DELETE").Select(operation => operation.ToString())];

    [Theory]
    [MemberData(nameof(Operations))]
    public async Task An_answer_that_nobody_accepts_is_not_made(string name)
    {
        var operation = Operation.OfInterface.Single(one => one.ToString() == name);

        var answer = await service.SendAsync(new HttpMethod(operation.Method), operation.Address, headers: ("Accept", "audio/midi"));

        Assert.Equal((406, "/problems/not-acceptable"), (answer.Status, answer.Problem.Type));
        Assert.Contains("`Accept: audio/midi` was given; the answer is ", answer.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_answer_without_a_body_is_acceptable_to_everybody()
    {
        await service.SendAsync(HttpMethod.Put, "/v1/catalogues/short-lived", """{ "currency": "EUR", "items": [] }""");

        Assert.Equal(204, (await service.SendAsync(HttpMethod.Delete, "/v1/catalogues/short-lived", headers: ("Accept", "audio/midi"))).Status);
    }
}
