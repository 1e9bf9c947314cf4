using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks.Ways;

/// <summary>
/// The quality of a kit as a sum: what needs something is cut wherever the nearness of a view begins or ends, and for each
/// stretch and level a variable may be 1 only if the kit has a view near it that is so good.
/// </summary>
internal static class PlainQuality
{
    /// <summary>Shorter stretches are what rounding leaves between two equal cuts.</summary>
    private const double LeastLength = 1e-12;

    /// <summary>Terms whose greatest sum is the quality of the kit.</summary>
    /// <param name="measure">Of the problem, after its first stage.</param>
    /// <param name="views">Of the candidates and the owned items.</param>
    /// <param name="exists">For each view the variable that says whether the kit has it.</param>
    /// <param name="solver">Is given the new variables.</param>
    public static IReadOnlyCollection<Term> Of(QualityMeasure measure, PlainViews views, IReadOnlyList<int> exists, ILinearProgram solver)
    {
        List<Term> terms = [];
        foreach (var (from, to) in Pieces(measure, views))
        {
            foreach (var level in measure.Levels)
            {
                var middle = (from + to) / 2;
                int[] near = [.. exists.Where((_, i) => IsNear(views.Listed[i], level, middle)).Distinct()];
                if (near.Length > 0)
                {
                    var served = solver.Binary();
                    solver.Row(0, [.. near.Select(view => new Term(view, 1)), new Term(served, -1)], double.PositiveInfinity);
                    terms.Add(new Term(served, measure.WeightOf(0) * (to - from)));
                }
            }
        }

        return terms;

        bool IsNear(PlainView view, int level, double position) =>
            view.KitView.Showing.Quality >= level && Math.Abs(view.At - position) <= measure.Radius;
    }

    private static IEnumerable<(double From, double To)> Pieces(QualityMeasure measure, PlainViews views)
    {
        double[] cuts = [.. views.Listed.SelectMany(view => new[] { view.At - measure.Radius, view.At + measure.Radius })];
        return measure.WantingIn(0).SelectMany(wanting => PiecesOf(wanting, cuts)).Where(piece => piece.To - piece.From > LeastLength);
    }

    private static IEnumerable<(double From, double To)> PiecesOf(Reach wanting, double[] cuts)
    {
        double[] bounds = [wanting.From, .. cuts.Where(cut => cut > wanting.From && cut < wanting.To).Order(), wanting.To];
        return bounds.Zip(bounds.Skip(1));
    }
}
