using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>
/// The figures of parts of one kit, without making a kit of each: a kit may have thirty thousand views, and a hundred parts of
/// it are asked for.
/// </summary>
/// <param name="kit">The whole.</param>
/// <param name="budget">Counts the work, and sees cancellation; null for nobody who could cancel. It cuts nothing short: what is
/// said of one kit is bounded by what a request may hold.</param>
internal sealed class PartsOfKit(Kit kit, WorkBudget? budget)
{
    /// <summary>Of asking whether a view is left, and of sorting it among those that are.</summary>
    private const long StepsOfView = 30;

    private readonly Reach[] reaches = new Reach[kit.Ladders.Max(ladder => ladder.Usable.Length)];
    private readonly Reach[] comfortable = new Reach[kit.Ladders.Max(ladder => ladder.Usable.Length)];
    private readonly double[] starts = new double[kit.Ladders.Max(ladder => ladder.Usable.Length)];

    /// <summary>What is left without all views that need one of these items.</summary>
    /// <param name="telescopes">The telescopes that count, by their indices.</param>
    /// <param name="items">Of the kit.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public LadderFigures Without(ImmutableArray<int> telescopes, IReadOnlyList<Item> items) =>
        LadderFigures.Of([.. telescopes.Select(t => In(t, index => !IsNeededBy(kit.Ladders[t].Usable[index], items)))]);

    /// <summary>What one telescope shows with some of its usable views.</summary>
    /// <param name="telescope">Its index.</param>
    /// <param name="isLeft">Which of them, by the index of the view.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public LadderFigures In(int telescope, Func<int, bool> isLeft)
    {
        var ladder = kit.Ladders[telescope];
        budget?.Spend(StepsOfView * ladder.Usable.Length);
        var (count, countComfortable) = (0, 0);
        for (var index = 0; index < ladder.Usable.Length; index++)
        {
            if (isLeft(index))
            {
                var view = ladder.Usable[index];
                reaches[count++] = view.Reach;
                if (view.IsComfortable)
                {
                    comfortable[countComfortable++] = view.Reach;
                }
            }
        }

        var (length, limits) = (ladder.Telescope.Axis.Length, kit.Problem.MismatchLimits);
        return LadderFigures.Of(reaches.AsSpan(0, count), starts.AsSpan(0, count), length, limits)
            .With(comfortable.AsSpan(0, countComfortable), length, limits);
    }

    private static bool IsNeededBy(KitView view, IReadOnlyList<Item> items)
    {
        for (var i = 0; i < items.Count; i++)
        {
            if (view.Needs(items[i]))
            {
                return true;
            }
        }

        return false;
    }
}
