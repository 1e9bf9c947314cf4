using System.Net.Mime;
using System.Text;
using System.Text.Json;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Solving;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Authentication;
using Evenstep.Service.Http.Health;
using Evenstep.Service.Http.OpenApi;

namespace Evenstep.Service.Features.Health;

/// <summary>The requests of the warm-up: the examples, every telescope of the demo catalogue, and one that cannot be granted.</summary>
internal sealed class WarmUpRequests(
    EndpointDataSource endpoints, IServiceScopeFactory scopes, CatalogueRegistry registry, WorkLimits limits, SelfRequest selfRequest)
{
    private const string Infeasible =
        """
        { "telescopes": [ { "apertureMm": 203, "focalLengthMm": 1218, "focuserBarrel": "2in" } ], "catalogue": { "id": "demo" },
          "limits": { "budget": 100 }, "preferences": { "mustFrame": [ { "widthDeg": 20 } ] } }
        """;

    private static readonly (string Operation, string Examples)[] OtherExamples =
        [("assess", "assessment"), ("judge", "second-opinion"), ("chart", "spending-curve"), ("lead", "buying-path"), ("choose", "choice")];

    /// <summary>Has both engines solve the first example.</summary>
    public void TryEngines(CancellationToken stopping)
    {
        using var body = JsonDocument.Parse(Example.BeginningWith("recommendation").First().Body.ToJsonString());
        var faults = new Faults();
        var problem = RecommendationReader.Read(body.RootElement, registry.Of(Owner.Nobody), faults)?.Problem
            ?? throw new InvalidDataException($"The warm-up example is faulty: {string.Join("; ", faults.Shown)}");
        var plan = Planner.Solve(problem, new WorkBudget(limits, null, stopping));
        if (Certifier.Certify(problem, plan, new WorkBudget(limits, null, stopping)) is false)
        {
            throw new InvalidDataException("The two engines disagree on the warm-up example.");
        }
    }

    /// <summary>Sends every request through its route.</summary>
    public async Task AnswerAllAsync(CancellationToken stopping)
    {
        foreach (var body in RecommendationBodies())
        {
            await AnswerAsync("recommend", body, stopping);
        }

        foreach (var (operation, examples) in OtherExamples)
        {
            foreach (var example in Example.BeginningWith(examples))
            {
                await AnswerAsync(operation, example.Body.ToJsonString(), stopping);
            }
        }

        await selfRequest.SendAsync("/v1/recommendations", Infeasible, stopping);
    }

    private IEnumerable<string> RecommendationBodies() =>
    [
        .. Example.BeginningWith("recommendation").Select(example => example.Body.ToJsonString()),
        .. registry.Of(Owner.Nobody).Find(CatalogueSnapshot.DemoId)!.Telescopes.Keys.Select(TelescopeOfDemo),
        Infeasible,
    ];

    private static string TelescopeOfDemo(string id) =>
        $$"""{ "telescopes": [ { "id": "{{id}}" } ], "catalogue": { "id": "demo" }, "limits": { "budget": 300 } }""";

    private async Task AnswerAsync(string operation, string body, CancellationToken stopping)
    {
        await using var scope = scopes.CreateAsyncScope();
        var context = new DefaultHttpContext { RequestServices = scope.ServiceProvider, RequestAborted = stopping };
        context.Request.Method = HttpMethods.Post;
        context.Request.ContentType = MediaTypeNames.Application.Json;

        // The space makes it a body that nobody sends, so that nobody is given an answer that took as long as the first do.
        context.Request.Body = new MemoryStream(Encoding.UTF8.GetBytes(" " + body));
        await RouteOf(operation)(context);
        if (context.Response.StatusCode != StatusCodes.Status200OK)
        {
            throw new InvalidDataException($"The warm-up request was answered with {context.Response.StatusCode}: {body}");
        }
    }

    private RequestDelegate RouteOf(string operation) =>
        endpoints.Endpoints.First(one => one.Metadata.GetMetadata<IEndpointNameMetadata>()?.EndpointName == operation).RequestDelegate!;
}
