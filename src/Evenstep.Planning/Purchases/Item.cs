using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>Something owned, or for sale: an optic with what the shop knows of it. Equal by <see cref="Id"/> alone.</summary>
public sealed class Item(string id, Optic optic) : IEquatable<Item>
{
    public string Id { get; } = id;

    public Optic Optic { get; } = optic;

    public string? Name { get; init; }

    /// <summary>Whether its owner described it, so that it is none of the catalogue's: without a name it is called by what it is.</summary>
    public bool IsOwn { get; init; }

    /// <summary>In the catalogue's currency, with at most two decimal places.</summary>
    public decimal Price
    {
        get;
        init
        {
            field = value;
            ExactPrice = Money.Of(value);
        }
    }

    /// <summary>The price as the planner reckons with it.</summary>
    internal Money ExactPrice { get; private init; }

    /// <summary>What its views and those through it depend on.</summary>
    internal Make Make { get; } = Make.Of(optic);

    public double? MassGrams { get; init; }

    /// <summary>Items of one group come to focus together; null belongs to no group but its own.</summary>
    public string? ParfocalGroup { get; init; }

    public bool InStock { get; init; } = true;

    public Ocular? Ocular => Optic as Ocular;

    public bool IsBarlow => Optic is Barlow;

    public bool IsZoom => Optic is Zoom;

    public bool IsReticle => Optic is Eyepiece { Purpose: EyepiecePurpose.Reticle };

    public bool Equals(Item? other) => other is not null && Id == other.Id;

    public override bool Equals(object? obj) => Equals(obj as Item);

    public override int GetHashCode() => Id.GetHashCode(StringComparison.Ordinal);

    public override string ToString() => Id;
}
