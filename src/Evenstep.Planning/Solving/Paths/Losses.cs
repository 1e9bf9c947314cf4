using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Paths;

/// <summary>
/// What is lost by having bought this and not the best that the same money could have bought: by so much, as a share, is the
/// largest step wider. Steps that are enough are all alike.
/// </summary>
internal sealed class Losses(SpendingFrontier frontier)
{
    private readonly Money[] prices = [.. frontier.Points.Select(point => Money.Of(point.TotalPrice))];
    private readonly Step enough = frontier.Problem.EnoughStep;

    /// <summary>The loss once so much is spent; 0 where no set of that price is allowed.</summary>
    public double Of(Money spent, Step largestStep)
    {
        var last = LastUpTo(spent);
        return last < 0 ? 0 : Math.Max(0, Step.Max(enough, largestStep).Over(frontier.Points[last].LargestStep) - 1);
    }

    /// <summary>Whether a loss is above another by more than rounding.</summary>
    public static bool IsAbove(double loss, double other) => Tolerance.Above(loss, other);

    private int LastUpTo(Money spent)
    {
        var place = Array.BinarySearch(prices, spent);
        return place >= 0 ? place : ~place - 1;
    }
}
