using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model;

/// <summary>The best allowed set so far, as a kit, and whether it is proved best in its stage.</summary>
internal sealed record Standing(Kit Kit, bool IsProved)
{
    public ImmutableArray<Item> Purchases => Kit.Purchases;

    public static Standing Of(PurchaseProblem problem, ImmutableArray<Item> purchases, bool isProved) => new(Kit.Of(problem, purchases), isProved);
}
