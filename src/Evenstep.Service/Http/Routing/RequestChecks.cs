using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Bodies;
using Evenstep.Service.Http.Endpoints;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Http.Routing;

/// <summary>Turns away what no endpoint of a group can answer, before its handler is asked.</summary>
internal static class RequestChecks
{
    public static RouteGroupBuilder WithRequestChecks(this RouteGroupBuilder routes) => routes
        .WithMetadata(new RequestChecked())
        .AddEndpointFilter((context, next) => RefusalOf(context.HttpContext.Request) is { } refusal ? ValueTask.FromResult<object?>(refusal) : next(context));

    private static ProblemResult? RefusalOf(HttpRequest request) => BodyReader.RefusalOfAccept(request) ?? RefusalOfQuery(request);

    /// <summary>Whoever takes parameters also reports those that are not taken, together with all else that is wrong.</summary>
    private static ProblemResult? RefusalOfQuery(HttpRequest request)
    {
        if (request.Query.Count == 0 || QueryRule.Of(request.HttpContext) is not { Parameters.Count: 0 } rule)
        {
            return null;
        }

        var faults = new Faults();
        rule.ReportUnknown(request.Query, faults);
        return ProblemResult.Of(faults, "query");
    }
}
