using System.Diagnostics;
using Evenstep.Benchmarks.Problems;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks.Ways;

/// <summary>
/// Tries every set of candidates, where that ends. It leaves out only what no further purchase can mend: a set over a
/// limit, or with too many overlaps.
/// </summary>
internal sealed class ExhaustiveWay() : Way("exhaustive")
{
    public const int MostItems = 100;

    public override bool IsAsked(ProblemSet set, int number) => set.Items <= MostItems && base.IsAsked(set, number);

    public override Answer Solve(PurchaseProblem problem, TimeSpan cap)
    {
        var search = new Search(problem, cap);
        return search.Run() ? search.Elect() : new Answer(Ending.Capped);
    }

    private sealed class Search(PurchaseProblem problem, TimeSpan cap)
    {
        private readonly long started = Stopwatch.GetTimestamp();
        private readonly Item[] candidates = [.. Candidacy.Of(problem).Candidates];
        private readonly PreferenceScore score = new(problem);
        private readonly double? wish = WideViewWish.TrueFieldWished(problem, Candidacy.Of(problem).Candidates);
        private readonly List<(StageFigures Figures, bool GrantsWish)> allowed = [];

        /// <summary>False if the time was up.</summary>
        public bool Run() => Try([], 0);

        public Answer Elect()
        {
            var standing = allowed.Exists(set => set.GrantsWish) ? allowed.Where(set => set.GrantsWish) : allowed;
            StageFigures[] left = [.. standing.Select(set => set.Figures)];
            if (left.Length == 0)
            {
                return Answer.Infeasible;
            }

            var leastStep = Keep(ref left, figures => figures.LnLargestStep, least => StageValues.StepLeeway * least);
            var leastExcess = Keep(ref left, figures => figures.MeanExcess, least => least + StageValues.ExcessLeeway);
            var preference = Keep(ref left, figures => figures.Preference, least => least);
            var price = Keep(ref left, figures => figures.Price, least => least);
            return new Answer(Ending.Proved, new StageFigures(leastStep, leastExcess, preference, price));
        }

        private static double Keep(ref StageFigures[] left, Func<StageFigures, double> value, Func<double, double> most)
        {
            var least = left.Min(value);
            left = [.. left.Where(figures => Tolerance.AtMost(value(figures), most(least)))];
            return least;
        }

        private bool Try(Item[] purchases, int next)
        {
            if (Stopwatch.GetElapsedTime(started) > cap)
            {
                return false;
            }

            var kit = Kit.Of(problem, purchases);
            Breach[] breaches = [.. Breaches.Of(kit)];
            if (breaches.Length == 0)
            {
                allowed.Add((FiguresOf(kit), wish is { } field && FramingRule.Frames(kit, field, telescopeIndex: null)));
            }

            return Array.Exists(breaches, IsForGood) || TryLarger(purchases, next);
        }

        private bool TryLarger(Item[] purchases, int next)
        {
            for (var i = next; i < candidates.Length && purchases.Length < problem.Limits.MaxPurchases; i++)
            {
                if (!Try([.. purchases, candidates[i]], i + 1))
                {
                    return false;
                }
            }

            return true;
        }

        private static bool IsForGood(Breach breach) =>
            breach is not (Breach.MustInclude or Breach.MustFrame or Breach.Reticle);

        private StageFigures FiguresOf(Kit kit) => new(
            Math.Max(problem.EnoughStep.Ln, kit.Figures.LargestStep.Ln),
            kit.Figures.MeanExcess,
            score.Of(kit.Purchases),
            (double)kit.TotalPrice);
    }
}
