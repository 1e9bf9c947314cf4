namespace Evenstep.Service.Documents;

/// <summary>Tells the OpenAPI document what the parts of an endpoint's path mean.</summary>
internal sealed record DescribesPath(params (string Name, string Meaning)[] Parts);
