namespace Evenstep.Service.Http.Routing;

/// <summary>Whatever answers GET answers HEAD alike (RFC 9110, section 9.3.2); the server itself leaves the body out.</summary>
internal static class HeadOfGet
{
    public static RouteGroupBuilder WithHead(this RouteGroupBuilder routes)
    {
        ((IEndpointConventionBuilder)routes).Add(AddHead);
        return routes;
    }

    private static void AddHead(EndpointBuilder endpoint)
    {
        for (var i = 0; i < endpoint.Metadata.Count; i++)
        {
            if (endpoint.Metadata[i] is HttpMethodMetadata { HttpMethods: [var only] } && HttpMethods.IsGet(only))
            {
                endpoint.Metadata[i] = new HttpMethodMetadata([HttpMethods.Get, HttpMethods.Head]);
            }
        }
    }
}
