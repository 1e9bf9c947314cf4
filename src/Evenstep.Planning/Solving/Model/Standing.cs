using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model;

/// <summary>The best allowed set so far, with its exact figures, and whether it is proved best in its stage.</summary>
internal sealed record Standing(ImmutableArray<Item> Purchases, LadderFigures Figures, bool IsProved)
{
    public static Standing Of(PurchaseProblem problem, ImmutableArray<Item> purchases, bool isProved) =>
        new(purchases, Kit.Of(problem, purchases).Figures, isProved);
}
