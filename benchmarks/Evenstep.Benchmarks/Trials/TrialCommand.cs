using Evenstep.Benchmarks.Reports;

namespace Evenstep.Benchmarks.Trials;

/// <summary>Runs the trial that the command line names, and shows its report.</summary>
internal static class TrialCommand
{
    private const string TableIntroduction =
        "Each row on a service of its own as built here, over HTTP on the loopback address; given up after 30 s, killed at 4 GB (1e9 bytes) resident.";

    /// <returns>0, or 2 for a name that is not known.</returns>
    public static async Task<int> RunAsync(TrialOptions options)
    {
        if (await ReportAsync(options) is not { } report)
        {
            await Console.Error.WriteLineAsync(TrialOptions.Usage);
            return 2;
        }

        var text = $"{ReportFile.Head(quick: false)}\n{report}";
        Console.WriteLine(text);
        if (options.Subject is { } subject)
        {
            Progress.Tell($"written to {ReportFile.Write(text, $"-{subject}")}");
        }

        return 0;
    }

    private static async Task<string?> ReportAsync(TrialOptions options)
    {
        var rows = IssueTable.Rows.Where(row => options.Name == "table" || options.Name == row.Name).ToArray();
        return options.Name switch
        {
            _ when rows.Length > 0 => await TableAsync(rows),
            "random" => await RandomRequests.RunAsync(options),
            "fuzz" => await FuzzReport.RunAsync(options),
            "soak" => await SoakTrial.RunAsync(options),
            "overload" => await OverloadTrial.RunAsync(options),
            "fairness" => await FairnessTrial.RunAsync(options),
            _ => null,
        };
    }

    private static async Task<string> TableAsync(IEnumerable<(string Name, Func<Task<TrialResult>> Run)> rows)
    {
        List<TrialResult> results = [];
        foreach (var (name, run) in rows)
        {
            Progress.Tell(name);
            results.Add(await run());
            Progress.Tell($"{results[^1]}");
        }

        return TrialResult.Report("The heaviest requests", TableIntroduction, [.. results]);
    }
}
