using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks.Problems;

/// <summary>In what the problems of a set differ from the usual ones.</summary>
internal sealed record Variant(string Name)
{
    /// <summary>Four purchases, one telescope, no zooms, no interests, no demands, comfort, no spectacles.</summary>
    public static readonly Variant Usual = new("usual");

    /// <summary>Each thing on its own.</summary>
    public static readonly ImmutableArray<Variant> Others =
    [
        new("3 purchases") { MaxPurchases = 3 },
        new("6 purchases") { MaxPurchases = 6 },
        new("8 purchases") { MaxPurchases = 8 },
        new("2 telescopes") { Telescopes = 2 },
        new("4 telescopes") { Telescopes = 4 },
        new("zooms") { Zooms = true },
        new("interests") { Interests = true },
        new("must frame") { MustFrame = true },
        new("must include") { MustInclude = true },
        new("reticle") { Reticle = true },
        new("low price") { Prefer = Prefer.LowPrice },
        new("wide field") { Prefer = Prefer.WideField },
        new("long eye relief") { Prefer = Prefer.LongEyeRelief },
        new("light weight") { Prefer = Prefer.LightWeight },
        new("parfocal") { Prefer = Prefer.Parfocal },
        new("spectacles") { Spectacles = true },
    ];

    public int MaxPurchases { get; init; } = 4;

    public int Telescopes { get; init; } = 1;

    public bool Zooms { get; init; }

    /// <summary>A large share of the catalogue are Barlows of three factors.</summary>
    public bool ManyBarlows { get; init; }

    public bool Interests { get; init; }

    public bool MustFrame { get; init; }

    public bool MustInclude { get; init; }

    public bool Reticle { get; init; }

    public Prefer Prefer { get; init; }

    public bool Spectacles { get; init; }
}
