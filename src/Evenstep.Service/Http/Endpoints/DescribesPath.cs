namespace Evenstep.Service.Http.Endpoints;

/// <summary>Tells the OpenAPI document what the parts of an endpoint's path mean.</summary>
/// <param name="MostCharacters">No part has more.</param>
/// <param name="Parts">The name of each, and what it is.</param>
internal sealed record DescribesPath(int MostCharacters, params (string Name, string Meaning)[] Parts);
