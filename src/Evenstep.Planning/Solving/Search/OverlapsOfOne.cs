namespace Evenstep.Planning.Solving.Search;

/// <summary>The overlaps between one ocular and others.</summary>
/// <param name="Bench">The bench.</param>
/// <param name="Place">Which ocular.</param>
/// <param name="Counted">The counts, by the other's place; null if they are not worth counting beforehand.</param>
internal readonly record struct OverlapsOfOne(Bench Bench, int Place, int[]? Counted)
{
    public int With(int other) => Counted is null ? Bench.OverlapsBetween(Place, other) : Counted[other];
}
