using System.Diagnostics;
using Google.OrTools.LinearSolver;

namespace Evenstep.Benchmarks.Ways;

/// <summary>A program for one of the MIP solvers that come with the package, with one thread and its proof carried to the end.</summary>
internal sealed class MipProgram : ILinearProgram
{
    private readonly Solver solver;
    private readonly List<Variable> variables = [];

    private MipProgram(Solver solver)
    {
        this.solver = solver;
        solver.SetNumThreads(1);
    }

    /// <summary>Null if the package does not have the solver.</summary>
    public static MipProgram? Scip() => Of("SCIP");

    /// <summary>Null if the package does not have the solver.</summary>
    public static MipProgram? Highs()
    {
        var program = Of("HIGHS");
        // Otherwise each run writes a line of its own among those of the report.
        program?.solver.SetSolverSpecificParametersAsString("output_flag=false");
        return program;
    }

    public int Binary() => Add(solver.MakeBoolVar(""));

    public int Amount(double most) => Add(solver.MakeNumVar(0, most, ""));

    public void Row(double least, IReadOnlyCollection<Term> terms, double most, bool inWholes)
    {
        var row = solver.MakeConstraint(least, most);
        foreach (var (variable, coefficient) in terms)
        {
            row.SetCoefficient(variables[variable], coefficient);
        }
    }

    public void Fix(int binary, bool value) => variables[binary].SetBounds(value ? 1 : 0, value ? 1 : 0);

    public RunEnd Minimize(IReadOnlyCollection<Term> terms, TimeSpan left)
    {
        var objective = solver.Objective();
        objective.Clear();
        foreach (var (variable, coefficient) in terms)
        {
            objective.SetCoefficient(variables[variable], coefficient);
        }

        objective.SetMinimization();
        solver.SetTimeLimit(Math.Max(1, (long)left.TotalMilliseconds));
        var started = Stopwatch.GetTimestamp();
        using var parameters = new MPSolverParameters();
        // The default of 1e-4 would stop before the best set is found.
        parameters.SetDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, 0);
        return solver.Solve(parameters) switch
        {
            Solver.ResultStatus.OPTIMAL => RunEnd.Best,
            Solver.ResultStatus.INFEASIBLE => RunEnd.Infeasible,
            Solver.ResultStatus.FEASIBLE or Solver.ResultStatus.NOT_SOLVED => RunEnd.Capped,
            // HiGHS, through this wrapper, calls it abnormal when its time is up.
            _ => Stopwatch.GetElapsedTime(started) >= left ? RunEnd.Capped : RunEnd.Failed,
        };
    }

    public bool IsOne(int binary) => variables[binary].SolutionValue() > 0.5;

    public void Dispose() => solver.Dispose();

    private static MipProgram? Of(string solverName) =>
        Solver.CreateSolver(solverName) is { } solver ? new MipProgram(solver) : null;

    private int Add(Variable variable)
    {
        variables.Add(variable);
        return variables.Count - 1;
    }
}
