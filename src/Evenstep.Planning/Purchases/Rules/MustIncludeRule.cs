namespace Evenstep.Planning.Purchases;

/// <summary>Every item that must be included is bought.</summary>
internal static class MustIncludeRule
{
    public static IEnumerable<Breach> BrokenBy(Kit kit) =>
        kit.Problem.Demands.MustInclude.Where(id => kit.Purchases.All(item => item.Id != id)).Select(id => new Breach.MustInclude(id));
}

public abstract partial record Breach
{
    public sealed record MustInclude(string ItemId) : Breach;
}
