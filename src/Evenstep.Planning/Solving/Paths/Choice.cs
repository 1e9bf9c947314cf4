using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Paths;

/// <summary>Something that may be bought on a path.</summary>
/// <param name="Place">Among all choices, the cheapest first.</param>
/// <param name="Item">What it is.</param>
/// <param name="Ocular">Its place among all oculars; -1 for a Barlow or a reticle eyepiece.</param>
/// <param name="Barlow">Its place among all Barlows; -1 for any other.</param>
/// <param name="IsMust">Whether it must be bought.</param>
internal sealed record Choice(int Place, Item Item, int Ocular, int Barlow, bool IsMust)
{
    public const int None = -1;

    public Money Price => Item.ExactPrice;
}
