namespace Evenstep.Service.Catalogues;

/// <summary>Whose catalogues they are: each owner sees only its own, and those that are everyone's.</summary>
internal sealed record Owner(string Name)
{
    /// <summary>Whoever sends a request where no keys are asked for.</summary>
    public static readonly Owner Nobody = new("");
}

/// <summary>Tells a stored catalogue from all others: two owners may each have one of the same id.</summary>
internal sealed record CatalogueKey(Owner Owner, string Id);
