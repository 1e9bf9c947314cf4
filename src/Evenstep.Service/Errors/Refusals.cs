namespace Evenstep.Service.Errors;

/// <summary>Tells the OpenAPI document which errors an endpoint answers beside those that any may.</summary>
internal static class Refusals
{
    public static RouteHandlerBuilder Refuses(this RouteHandlerBuilder route, params ReadOnlySpan<ProblemKind> kinds)
    {
        foreach (var kind in kinds)
        {
            route.Produces<ProblemDocument>(kind.Status, ProblemResult.ContentType);
        }

        return route;
    }
}
