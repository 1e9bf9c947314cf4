namespace Evenstep.Benchmarks.Ways;

/// <summary>A variable times a coefficient.</summary>
internal readonly record struct Term(int Variable, double Coefficient);

/// <summary>How a run of a solver ended.</summary>
internal enum RunEnd
{
    Best,
    Infeasible,
    Capped,
    Failed,
}

/// <summary>What the plain model asks of a solver: yes-or-no variables, one amount, and linear rows over them.</summary>
internal interface ILinearProgram : IDisposable
{
    /// <summary>A new variable that is 0 or 1.</summary>
    int Binary();

    /// <summary>A new variable from 0 to the most.</summary>
    int Amount(double most);

    /// <summary>The sum of the terms lies between the bounds; either may be infinite.</summary>
    /// <param name="least">The lower bound.</param>
    /// <param name="terms">No variable twice.</param>
    /// <param name="most">The upper bound.</param>
    /// <param name="inWholes">Whether every coefficient and bound is a whole number.</param>
    void Row(double least, IReadOnlyCollection<Term> terms, double most, bool inWholes = true);

    void Fix(int binary, bool value);

    /// <summary>Finds the least sum of the terms.</summary>
    RunEnd Minimize(IReadOnlyCollection<Term> terms, TimeSpan left);

    /// <summary>Whether the last run set a variable to 1.</summary>
    bool IsOne(int binary);
}
