namespace Evenstep.Benchmarks;

/// <summary>What the command line asks for.</summary>
/// <param name="Engines">Compare the ways of solving.</param>
/// <param name="Http">Measure the service.</param>
/// <param name="Batch">Measure batches.</param>
/// <param name="Certificates">Have the model confirm what the search proved.</param>
/// <param name="Curves">Compare spending curves with plans.</param>
/// <param name="Overload">Offer the service more than it can do.</param>
/// <param name="Advice">Look at the advice itself, not at its time.</param>
/// <param name="Quick">A look in minutes, on fewer and smaller problems.</param>
/// <param name="WritesReport">Write the report to a file, besides showing it.</param>
internal sealed record Options(
    bool Engines, bool Http, bool Batch, bool Certificates, bool Curves, bool Overload, bool Advice, bool Quick, bool WritesReport)
{
    public const string Usage = """
        dotnet run -c Release --project benchmarks/Evenstep.Benchmarks -- [engines|http|batch|certificates|curves|overload|advice|all] [--quick] [--report]

          engines   compare our engines with other ways of solving the same problems
          http      measure the service over HTTP against a floor
          batch     measure a batch beside the planner alone, and its memory
          certificates  have the model confirm what the search proved, on larger problems
          curves    spending curves beside plans of the same problems
          overload  offer the service more than it can do, on one core
          advice    what the service advises on the demo catalogue: drawbacks, prices, shares (writes no file without --report)
          all       everything (the default)
          --quick   a look in under five minutes; writes no file unless --report is given
          --report  write the report to benchmarks/reports; without --quick that is the default
        """;

    private static readonly string[] Parts = ["engines", "http", "batch", "certificates", "curves", "overload", "advice", "all"];

    private static readonly string[] Flags = ["--quick", "--report"];

    /// <summary>How long one way may work on one problem.</summary>
    public TimeSpan Cap => TimeSpan.FromSeconds(Quick ? 2 : 10);

    /// <summary>A way that has worked on one set for so long is asked for no further problem of it.</summary>
    public TimeSpan CapPerSet => TimeSpan.FromSeconds(Quick ? 8 : 150);

    /// <summary>How long each way runs before it is timed.</summary>
    public TimeSpan WarmUp => TimeSpan.FromSeconds(Quick ? 2 : 10);

    /// <summary>How long one load is kept up.</summary>
    public TimeSpan Load => TimeSpan.FromSeconds(Quick ? 3 : 20);

    /// <summary>Part of the report's file name: nothing for a report of everything.</summary>
    public string FileNameEnd => (Engines, Http, Certificates) switch
    {
        (true, true, true) => "",
        (true, _, _) => "-engines",
        (_, true, _) => "-http",
        (_, _, true) => "-certificates",
        _ => Batch ? "-batch" : Overload ? "-overload" : Advice ? "-advice" : "-curves",
    };

    /// <summary>Null for a command line that is not understood.</summary>
    public static Options? Parse(string[] args)
    {
        string[] flags = [.. args.Where(arg => arg.StartsWith('-'))];
        string[] parts = [.. args.Except(flags)];
        if (parts.Length > 1 || parts.Except(Parts).Any() || flags.Except(Flags).Any())
        {
            return null;
        }

        var part = parts is [var only] ? only : "all";
        var quick = flags.Contains("--quick");
        bool Has(string name) => part == name || part == "all";
        return new Options(
            Has("engines"),
            Has("http"),
            Has("batch"),
            Has("certificates"),
            Has("curves"),
            Has("overload"),
            Has("advice"),
            quick,
            (!quick && part != "advice") || flags.Contains("--report"));
    }
}
