namespace Evenstep.Benchmarks.Ways;

/// <summary>A step that a kit might have.</summary>
/// <param name="Variable">1 if the kit has it.</param>
/// <param name="LnStep">Its length as the largest step counts it.</param>
/// <param name="Excess">What it adds to the mean excess.</param>
internal readonly record struct Arc(int Variable, double LnStep, double Excess);

/// <summary>
/// A path through the views of the kit: from one end of the range to the other, each existing view entered and left once,
/// always towards higher power.
/// </summary>
internal sealed class PlainPath
{
    private readonly ILinearProgram solver;
    private readonly double enough;
    private readonly double length;
    private readonly List<Arc>[] into;
    private readonly List<Arc>[] outOf;
    private readonly List<Arc> intoEnd = [];
    private readonly List<Arc> outOfStart = [];

    public PlainPath(PlainViews views, ILinearProgram solver)
    {
        this.solver = solver;
        enough = views.Problem.EnoughStep.Half;
        length = views.Problem.Telescopes[0].Axis.Length;
        double[] at = [.. views.Listed.Select(view => view.At)];
        into = [.. at.Select(_ => new List<Arc>())];
        outOf = [.. at.Select(_ => new List<Arc>())];
        Draw(at);
    }

    public IEnumerable<Arc> Arcs => outOfStart.Concat(outOf.SelectMany(arcs => arcs));

    /// <summary>The arcs into each view, and those into the end: of each group a kit uses at most one.</summary>
    public IEnumerable<IReadOnlyList<Arc>> ArcsByTarget => into.Append(intoEnd);

    /// <summary>Ties the path to the variables that say which view exists.</summary>
    public void Join(IReadOnlyList<int> exists)
    {
        solver.Row(1, Ones(outOfStart), 1);
        solver.Row(1, Ones(intoEnd), 1);
        for (var i = 0; i < exists.Count; i++)
        {
            solver.Row(0, [.. Ones(into[i]), new Term(exists[i], -1)], 0);
            solver.Row(0, [.. Ones(outOf[i]), new Term(exists[i], -1)], 0);
        }
    }

    private static List<Term> Ones(List<Arc> arcs) => [.. arcs.Select(arc => new Term(arc.Variable, 1))];

    private void Draw(double[] at)
    {
        Add(outOfStart, intoEnd, new Arc(solver.Binary(), 2 * length, Math.Max(0, length - enough)));
        for (var i = 0; i < at.Length; i++)
        {
            Add(outOfStart, into[i], AtEnd(at[i]));
            Add(outOf[i], intoEnd, AtEnd(length - at[i]));
            for (var j = i + 1; j < at.Length; j++)
            {
                Add(outOf[i], into[j], Between(at[j] - at[i]));
            }
        }
    }

    private static void Add(List<Arc> from, List<Arc> to, Arc arc)
    {
        from.Add(arc);
        to.Add(arc);
    }

    private Arc AtEnd(double distance) => new(solver.Binary(), 2 * distance, Triangle(distance));

    private Arc Between(double distance) => new(solver.Binary(), distance, 2 * Triangle(distance / 2));

    /// <summary>The mismatch rises from 0 along one side of a step; this is the part of it above what is enough.</summary>
    private double Triangle(double side)
    {
        var over = Math.Max(0, side - enough);
        return over * over / 2 / length;
    }
}
