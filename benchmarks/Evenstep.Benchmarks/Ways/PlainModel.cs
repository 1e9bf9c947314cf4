using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks.Ways;

/// <summary>
/// The model that one would write down first. A variable for each candidate and for each view; the views of a kit in order
/// of power are a path of arcs from one end of the range to the other, so that each arc used is a step of the kit, with its
/// length and its share of the mean excess.
/// </summary>
internal sealed class PlainModel
{
    private readonly PlainViews views;
    private readonly ILinearProgram solver;
    private readonly int[] bought;
    private readonly int[] exists;
    private readonly PlainPath path;
    private readonly int largestStep;

    public PlainModel(PlainViews views, ILinearProgram solver, double? wishedFieldDeg)
    {
        (this.views, this.solver) = (views, solver);
        bought = [.. views.Candidates.Select(_ => solver.Binary())];
        exists = [.. views.Listed.Select(Existence)];
        largestStep = solver.Amount(2 * Length);
        solver.Row(Problem.EnoughStep.Ln, [new Term(largestStep, 1)], double.PositiveInfinity, inWholes: false);
        KeepLimits();
        KeepOverlapsOut();
        KeepDemands();
        Wish = wishedFieldDeg is { } wished ? WishFor(wished) : null;
        path = new PlainPath(views, solver);
        path.Join(exists);
        MeasureLargestStep();
    }

    public PurchaseProblem Problem => views.Problem;

    /// <summary>May be 1 only if the kit has the wide view that is wished for; null if none is.</summary>
    public int? Wish { get; }

    public IReadOnlyCollection<Term> LargestStep => [new Term(largestStep, 1)];

    public IReadOnlyCollection<Term> MeanExcess => [.. path.Arcs.Select(arc => new Term(arc.Variable, arc.Excess))];

    public IReadOnlyCollection<Term> Price => Sum(item => (double)item.Price);

    /// <summary>What the owned items alone add to the preference.</summary>
    public double PreferenceOwned => new PreferenceScore(Problem).Of([]);

    private double Length => Problem.Telescopes[0].Axis.Length;

    public Item[] Purchases() => [.. views.Candidates.Where((_, number) => solver.IsOne(bought[number]))];

    public void KeepLargestStep(double lnMost)
    {
        foreach (var arc in path.Arcs.Where(arc => Tolerance.Above(arc.LnStep, lnMost)))
        {
            solver.Fix(arc.Variable, value: false);
        }
    }

    /// <summary>What the kit's quality is the greatest sum of.</summary>
    public IReadOnlyCollection<Term> Quality(QualityMeasure measure) => PlainQuality.Of(measure, views, exists, solver);

    /// <summary>What the purchases add to the preference.</summary>
    public IReadOnlyCollection<Term> Preference() =>
        Problem.Preferences.Prefer == Prefer.Parfocal ? ParfocalGroups() : Sum(new PreferenceScore(Problem).OfItem);

    private List<Term> ParfocalGroups()
    {
        var owned = Problem.Owned.Select(item => item.ParfocalGroup).ToHashSet();
        List<Term> groups = [];
        foreach (var (number, item) in views.Candidates.Index().Where(one => one.Item.Ocular is not null && one.Item.ParfocalGroup is null))
        {
            groups.Add(new Term(bought[number], 1));
        }

        var toGroup = views.Candidates.Index().Where(one => one.Item.ParfocalGroup is { } name && !owned.Contains(name));
        foreach (var group in toGroup.GroupBy(one => one.Item.ParfocalGroup))
        {
            var present = solver.Binary();
            groups.Add(new Term(present, 1));
            foreach (var (number, _) in group)
            {
                solver.Row(0, [new Term(present, 1), new Term(bought[number], -1)], 1);
            }
        }

        return groups;
    }

    /// <summary>The largest step is at least each step of the kit.</summary>
    private void MeasureLargestStep()
    {
        foreach (var arcs in path.ArcsByTarget)
        {
            IEnumerable<Term> step = arcs.Select(arc => new Term(arc.Variable, -arc.LnStep));
            solver.Row(0, [new Term(largestStep, 1), .. step], double.PositiveInfinity, inWholes: false);
        }
    }

    private List<Term> Sum(Func<Item, double> amount) =>
        [.. views.Candidates.Select((item, number) => new Term(bought[number], amount(item)))];

    /// <summary>A variable that is 1 exactly when all that the view needs is bought.</summary>
    private int Existence(PlainView view)
    {
        if (view.Needs.Length == 1)
        {
            return bought[view.Needs[0]];
        }

        var all = solver.Binary();
        if (view.Needs.IsEmpty)
        {
            solver.Fix(all, value: true);
            return all;
        }

        var (eyepiece, barlow) = (bought[view.Needs[0]], bought[view.Needs[1]]);
        solver.Row(0, [new Term(eyepiece, 1), new Term(all, -1)], 1);
        solver.Row(0, [new Term(barlow, 1), new Term(all, -1)], 1);
        solver.Row(-1, [new Term(all, 1), new Term(eyepiece, -1), new Term(barlow, -1)], 0);
        return all;
    }

    private void KeepLimits()
    {
        solver.Row(0, Sum(item => (double)item.Price), (double)Problem.Limits.Budget, inWholes: false);
        solver.Row(0, Sum(_ => 1), Problem.Limits.MaxPurchases);
        solver.Row(0, Sum(item => item.IsBarlow ? 1 : 0), Problem.Limits.MaxBarlows);
    }

    private void KeepOverlapsOut()
    {
        for (var i = 0; i < exists.Length; i++)
        {
            for (var j = i + 1; j < exists.Length; j++)
            {
                var (a, b) = (views.Listed[i].KitView, views.Listed[j].KitView);
                if ((a.NeedsPurchase || b.NeedsPurchase) && Overlap.Between(a.Showing, b.Showing, Problem.LeastStep))
                {
                    solver.Row(0, [new Term(exists[i], 1), new Term(exists[j], 1)], 1);
                }
            }
        }
    }

    private void KeepDemands()
    {
        foreach (var (number, _) in views.Candidates.Index().Where(one => Problem.Demands.MustInclude.Contains(one.Item.Id)))
        {
            solver.Fix(bought[number], value: true);
        }

        foreach (var framing in Problem.Demands.MustFrame)
        {
            solver.Row(1, Wide(framing.WidthDeg), double.PositiveInfinity);
        }
    }

    private int WishFor(double trueFieldDeg)
    {
        var granted = solver.Binary();
        solver.Row(0, [.. Wide(trueFieldDeg), new Term(granted, -1)], double.PositiveInfinity);
        return granted;
    }

    private List<Term> Wide(double trueFieldDeg) =>
    [
        .. exists.Where((_, i) => Tolerance.AtLeast(views.Listed[i].KitView.View.TrueFieldDeg / trueFieldDeg, 1)).Distinct().Select(view => new Term(view, 1)),
    ];
}
