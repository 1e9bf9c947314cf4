namespace Evenstep.Service.Http.Authentication;

/// <summary>Whose catalogues they are: each owner sees only its own, and those that are everyone's.</summary>
internal sealed record Owner(string Name)
{
    /// <summary>Whoever sends a request where no keys are asked for.</summary>
    public static readonly Owner Nobody = new("");
}
