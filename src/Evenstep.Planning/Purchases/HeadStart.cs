using System.Collections.Immutable;

namespace Evenstep.Planning.Purchases;

/// <summary>How far the search came before its limit, for the model to go on from.</summary>
/// <param name="Purchases">An allowed set, the best known in its largest step.</param>
/// <param name="Bound">A proven lower bound on the least largest step.</param>
public sealed record HeadStart(ImmutableArray<Item> Purchases, Step Bound);
