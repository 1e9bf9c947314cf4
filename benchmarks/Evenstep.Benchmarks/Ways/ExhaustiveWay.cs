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
        private readonly double? wish = WideViewWish.TrueFieldWished(problem, Candidacy.Of(problem).Candidates);
        private readonly List<(Item[] Purchases, StageFigures Figures, bool GrantsWish)> allowed = [];

        /// <summary>False if the time was up.</summary>
        public bool Run() => Try([], 0);

        public Answer Elect()
        {
            (Item[] Purchases, StageFigures Figures, bool GrantsWish)[] left = [.. allowed];
            if (left.Length == 0)
            {
                return Answer.Infeasible;
            }

            var leastStep = Keep(ref left, figures => figures.LnLargestStep, least => StageValues.StepLeeway * least);
            if (left.Any(set => set.GrantsWish))
            {
                left = [.. left.Where(set => set.GrantsWish)];
            }

            var leastExcess = Keep(ref left, figures => figures.MeanExcess, least => least + StageValues.ExcessLeeway);
            var quality = 0.0;
            if (problem.Preferences.Prefer != Prefer.LowPrice)
            {
                var measure = QualityMeasure.Of(problem, Candidacy.Of(problem).Telescopes, new Step(StageValues.StepLeeway * leastStep));
                left = [.. left.Select(set => set with { Figures = StageFigures.Of(problem, set.Purchases, measure) })];
                quality = -Keep(ref left, figures => -figures.Quality, least => least + StageValues.QualityLeeway);
            }

            var preference = Keep(ref left, figures => figures.Preference, least => least);
            var price = Keep(ref left, figures => figures.Price, least => least);
            return new Answer(Ending.Proved, new StageFigures(leastStep, leastExcess, quality, preference, price));
        }

        private static double Keep(
            ref (Item[] Purchases, StageFigures Figures, bool GrantsWish)[] left, Func<StageFigures, double> value, Func<double, double> most)
        {
            var least = left.Min(set => value(set.Figures));
            left = [.. left.Where(set => Tolerance.AtMost(value(set.Figures), most(least)))];
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
                allowed.Add((purchases, StageFigures.Of(problem, purchases), wish is { } field && FramingRule.Frames(kit, field, telescopeIndex: null)));
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
    }
}
