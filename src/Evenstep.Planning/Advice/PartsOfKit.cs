using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>
/// The figures of parts of one kit, without making a kit of each: a kit may have thirty thousand views, and a hundred parts of
/// it are asked for.
/// </summary>
/// <param name="kit">The whole.</param>
/// <param name="telescopes">The telescopes that count, by their indices.</param>
/// <param name="budget">Counts the work, and sees cancellation; null for nobody who could cancel. It cuts nothing short: what is
/// said of one kit is bounded by what a request may hold.</param>
internal sealed class PartsOfKit(Kit kit, ImmutableArray<int> telescopes, WorkBudget? budget)
{
    /// <summary>Of asking whether a view is left, and of sorting it among those that are.</summary>
    private const long StepsOfView = 30;

    private readonly Reach[] reaches = new Reach[kit.Ladders.Max(ladder => ladder.Usable.Length)];
    private readonly Reach[] comfortable = new Reach[kit.Ladders.Max(ladder => ladder.Usable.Length)];
    private readonly double[] starts = new double[kit.Ladders.Max(ladder => ladder.Usable.Length)];

    /// <summary>What is left without all views that need one of these items.</summary>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public LadderFigures Without(params IReadOnlyList<Item> items) => LadderFigures.Of([.. telescopes.Select(t => FiguresOf(kit.Ladders[t], items))]);

    private LadderFigures FiguresOf(Ladder ladder, IReadOnlyList<Item> without)
    {
        budget?.Spend(StepsOfView * ladder.Usable.Length);
        var (count, countComfortable) = (0, 0);
        foreach (var view in ladder.Usable)
        {
            if (!IsNeededBy(view, without))
            {
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
