using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>The reticle eyepieces one of which must be bought besides what is settled; none, if none need be.</summary>
internal sealed class ReticleChoice
{
    private static readonly ReticleChoice Impossible = new([], isPossible: false);
    private static readonly ReticleChoice NotNeeded = new([], isPossible: true);

    private ReticleChoice(ImmutableArray<Ware> serving, bool isPossible) => (Serving, IsPossible) = (serving, isPossible);

    /// <summary>Those that would do, if one is needed.</summary>
    public ImmutableArray<Ware> Serving { get; }

    /// <summary>False if one is needed and none would do, or if more than one would be bought.</summary>
    public bool IsPossible { get; }

    /// <summary>How many must be bought: one or none.</summary>
    public int Count => Serving.IsEmpty ? 0 : 1;

    /// <summary>What the cheapest that would do costs.</summary>
    public Money LeastPrice => Cheapest?.ExactPrice ?? Money.Zero;

    /// <summary>The cheapest that would do; null if none is needed.</summary>
    public Item? Cheapest => Serving.IsEmpty ? null : Serving.MinBy(ware => ware.Cost.Price)!.Item;

    /// <summary>Each that would do, or a single null if none is needed.</summary>
    public IEnumerable<Item?> ToTry => Serving.IsEmpty ? [null] : Serving.Select(ware => (Item?)ware.Item);

    /// <summary>What is needed with these settled purchases.</summary>
    public static ReticleChoice On(Groundwork ground, ImmutableArray<Item> settled)
    {
        var bought = settled.Count(item => item.IsReticle);
        if (ground.Problem.Demands.ReticleLeastPower is not { } asked)
        {
            return OneReticleRule.Allows(bought) ? NotNeeded : Impossible;
        }

        Item[] barlows = [.. ground.Problem.Owned.Concat(settled).Where(item => item.IsBarlow)];
        if (ReticleRule.IsServedBy(ground.Problem, ground.Problem.Owned.Concat(settled), barlows, asked))
        {
            return OneReticleRule.Allows(bought) ? NotNeeded : Impossible;
        }

        ImmutableArray<Ware> serving =
        [
            .. ground.Reticles.SelectMany(offer => offer.Wares).Where(ware => ReticleRule.Serves(ground.Problem, ware.Item, barlows, asked)),
        ];
        return serving.IsEmpty || !OneReticleRule.Allows(bought + 1) ? Impossible : new ReticleChoice(serving, isPossible: true);
    }

    /// <summary>What one costs beyond the cheapest that would do.</summary>
    public Money ExtraPrice(Item? reticle) => reticle is null ? Money.Zero : reticle.ExactPrice - LeastPrice;
}
