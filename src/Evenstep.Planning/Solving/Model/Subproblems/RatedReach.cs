using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model.Subproblems;

/// <summary>What a usable view reaches, and how good it is.</summary>
/// <param name="From">A position.</param>
/// <param name="To">A position; the same, unless it is a zoom's.</param>
/// <param name="Quality">In quarters.</param>
internal readonly record struct RatedReach(double From, double To, byte Quality)
{
    public static RatedReach Of(in Showing view) => new(view.Reach.From, view.Reach.To, view.Quality);

    public static int ByBeginning(RatedReach one, RatedReach other) => one.From.CompareTo(other.From);
}
