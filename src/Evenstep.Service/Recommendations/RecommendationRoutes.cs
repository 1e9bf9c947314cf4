using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Catalogues;
using Evenstep.Service.Documents;
using Evenstep.Service.Door;
using Evenstep.Service.Errors;
using Evenstep.Service.Reading;
using Microsoft.AspNetCore.Http.HttpResults;
using Serilog;

namespace Evenstep.Service.Recommendations;

/// <summary>What to buy.</summary>
internal static class RecommendationRoutes
{
    public static void MapRecommendations(this IEndpointRouteBuilder routes) =>
        routes.MapPost("/recommendations", RecommendAsync)
            .WithName("recommend")
            .WithTags("Recommendations")
            .WithMetadata(new TakesBody(RecommendationFields.Body, "recommendation"));

    /// <summary>Recommends what to buy for a telescope: the proven best set.</summary>
    /// <remarks>
    /// Among all sets of at most `maxPurchases` items of the catalogue that keep to the budget, repeat no power and meet
    /// every demand, it finds the one whose largest step between powers is least, then whose steps are least wide on
    /// average, then what `prefer` says. "Buy nothing" may be the answer, and so may "no set is allowed", with what would
    /// help. An example that runs as it stands is chosen above the body.
    /// </remarks>
    /// <response code="200">The recommendation. `infeasible` and `nothing-worthwhile` are answers too.</response>
    public static async Task<Results<Ok<RecommendationAnswer>, ProblemResult>> RecommendAsync(
        HttpRequest request, Shelf shelf, RefereedPlanner planner, IDiagnosticContext diagnostics, CancellationToken gone)
    {
        using var body = await FrontDoor.OpenAsync(request, gone);
        if (body.Refusal is { } refusal)
        {
            return refusal;
        }

        var faults = new Faults();
        if (RecommendationReader.Read(body.Json, shelf, faults) is not { } asked)
        {
            return ProblemResult.Of(faults);
        }

        var solved = await planner.SolveAsync(asked.Problem, body.Json, gone);
        diagnostics.Set(RequestLog.Outcome, Words<Outcome>.Of(solved.Plan.Outcome));
        diagnostics.Set(RequestLog.SolvingMs, solved.Took.TotalMilliseconds);
        var advice = Explanation.Of(asked.Problem, solved.Plan);
        return TypedResults.Ok(RecommendationWriter.Write(asked, solved, advice));
    }
}
