namespace Evenstep.Planning.Purchases;

/// <summary>A rule of an allowed set that a set of purchases breaks; each stands beside its rule.</summary>
public abstract partial record Breach;

/// <summary>The rules of an allowed set, in plain code: a file each under Rules, with the sentence that it encodes.</summary>
public static class Breaches
{
    private static readonly Func<Kit, IEnumerable<Breach>>[] Rules =
    [
        BudgetRule.BrokenBy,
        PurchaseCountRule.BrokenBy,
        BarlowCountRule.BrokenBy,
        OneReticleRule.BrokenBy,
        OverlapRule.BrokenBy,
        MustIncludeRule.BrokenBy,
        FramingRule.BrokenBy,
        ReticleRule.BrokenBy,
    ];

    /// <summary>Every rule that the kit's purchases break.</summary>
    public static IEnumerable<Breach> Of(Kit kit) => Rules.SelectMany(rule => rule(kit));
}
