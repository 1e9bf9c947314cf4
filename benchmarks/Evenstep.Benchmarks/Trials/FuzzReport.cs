using System.Globalization;
using Evenstep.Benchmarks.Reports;
using Evenstep.Benchmarks.Trials.Fuzz;

namespace Evenstep.Benchmarks.Trials;

/// <summary>The recorded run of the fuzzer.</summary>
internal static class FuzzReport
{
    private const int UsualCount = 100_000;
    private const int ShownFindings = 40;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(6);

    public static async Task<string> RunAsync(TrialOptions options)
    {
        var document = new ApiDocument(Path.Combine(Repository.Root, "openapi", "evenstep.v1.json"));
        using var service = await TrialService.StartAsync(IssueTable.Start([.. options.Settings]));
        using var validator = new Validator(Path.Combine(Repository.Root, "tests", "judges"), document.FilePath);
        var run = new FuzzRun(document, new FuzzJudge(validator), service);
        var results = await run.RunAsync(options.Seed, options.Count ?? UsualCount, Patience, sent => Progress.Tell($"{sent} requests"));
        foreach (var finding in results.Findings)
        {
            Progress.Tell(finding);
        }

        return Report(results, service.PeakMegabytes);
    }

    private static string Report(FuzzResults results, double peakMegabytes)
    {
        int Count(string beginning) => results.Findings.Count(finding => finding.StartsWith(beginning, StringComparison.Ordinal));
        var table = new Table(1, "what", "measured", "goal");
        table.Add("requests", Numbers.Show(results.Sent), "");
        table.Add("5xx that are not declared 503 or 507", Numbers.Show(Count("5xx")), "0");
        table.Add("no answer in 6 s", Numbers.Show(Count("hang")), "0");
        table.Add("connections broken off, processes ended", Numbers.Show(Count("broken off") + Count("the process")), "0");
        table.Add("answers outside the document", Numbers.Show(Count("outside")), "0");
        table.Add("disagreements that a schema could express", Numbers.Show(Count("disagreement")), "0");
        table.Add("slowest answer, s", Numbers.Show(results.Slowest.Seconds), "6");
        table.Add("most resident, MB", Numbers.Show(peakMegabytes), "");
        var statuses = string.Join(
            ", ", results.Statuses.OrderBy(one => one.Key).Select(one => string.Create(CultureInfo.InvariantCulture, $"{one.Key}: {one.Value:N0}")));
        var found = results.Findings.Count == 0
            ? ""
            : $"\nFindings (the first {ShownFindings}), each repeated by `--seed SEED --count 1`:\n\n" +
              $"{string.Concat(results.Findings.Take(ShownFindings).Select(one => $"- {OneLine(one)}\n"))}";
        return "## Requests drawn from the OpenAPI document\n\nFour at a time. Judged by ajv over the committed document. " +
            $"Faults that no schema can see: `{string.Join("`, `", FuzzJudge.BeyondSchemas)}`.\n\n{table}\nStatuses: {statuses}.\n{found}";
    }

    private static string OneLine(string finding) =>
        new([.. finding[..Math.Min(finding.Length, 700)].Select(letter => char.IsControl(letter) || char.IsSurrogate(letter) ? ' ' : letter)]);
}
