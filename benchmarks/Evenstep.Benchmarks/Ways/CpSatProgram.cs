using System.Globalization;
using Google.OrTools.Sat;

namespace Evenstep.Benchmarks.Ways;

/// <summary>A program for CP-SAT with its default parameters, but for one worker. What is no whole number is scaled.</summary>
internal sealed class CpSatProgram : ILinearProgram
{
    /// <summary>A ten-millionth of a position is far below what separates two catalogued powers.</summary>
    private const double UnitsPerOne = 1e7;

    private readonly CpModel model = new();
    private readonly List<IntVar> variables = [];
    private readonly HashSet<int> amounts = [];
    private CpSolver? last;

    public int Binary() => Add(model.NewBoolVar(""));

    public int Amount(double most)
    {
        var amount = Add(model.NewIntVar(0, (long)Math.Ceiling(most * UnitsPerOne), ""));
        amounts.Add(amount);
        return amount;
    }

    public void Row(double least, IReadOnlyCollection<Term> terms, double most, bool inWholes)
    {
        var units = inWholes ? 1 : UnitsPerOne;
        model.AddLinearConstraint(Sum(terms, units), Bound(least * units), Bound(most * units));
    }

    public void Fix(int binary, bool value) => model.Add(variables[binary] == (value ? 1 : 0));

    public RunEnd Minimize(IReadOnlyCollection<Term> terms, TimeSpan left)
    {
        model.Minimize(Sum(terms, UnitsPerOne));
        last = new CpSolver
        {
            StringParameters = string.Create(CultureInfo.InvariantCulture, $"num_workers:1,max_time_in_seconds:{Math.Max(0, left.TotalSeconds):F3}"),
        };
        return last.Solve(model) switch
        {
            CpSolverStatus.Optimal => RunEnd.Best,
            CpSolverStatus.Infeasible => RunEnd.Infeasible,
            CpSolverStatus.Feasible or CpSolverStatus.Unknown => RunEnd.Capped,
            _ => RunEnd.Failed,
        };
    }

    public bool IsOne(int binary) => last!.Value(variables[binary]) == 1;

    public void Dispose()
    {
        // Nothing of it is native between runs.
    }

    private int Add(IntVar variable)
    {
        variables.Add(variable);
        return variables.Count - 1;
    }

    private LinearExpr Sum(IReadOnlyCollection<Term> terms, double units) => LinearExpr.WeightedSum(
        terms.Select(term => variables[term.Variable]),
        terms.Select(term => (long)Math.Round(term.Coefficient * (amounts.Contains(term.Variable) ? 1 : units))));

    private static long Bound(double bound) => bound switch
    {
        double.PositiveInfinity => long.MaxValue,
        double.NegativeInfinity => long.MinValue,
        _ => (long)Math.Round(bound),
    };
}
