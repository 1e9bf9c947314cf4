using System.Globalization;
using System.Runtime.InteropServices;

namespace Evenstep.Benchmarks.Reports;

/// <summary>The report as a file, named by the day and the kind of machine.</summary>
internal static class ReportFile
{
    private static readonly string MachineKind = string.Create(
        CultureInfo.InvariantCulture, $"{Environment.ProcessorCount}-cores-{RuntimeInformation.ProcessArchitecture.ToString().ToLowerInvariant()}");

    private static string Today => TimeProvider.System.GetUtcNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Head(bool quick) => $"""
        # Benchmarks of {Today}

        {MachineKind}, {RuntimeInformation.FrameworkDescription}{(quick ? "; a quick look, on few problems" : "")}.

        """;

    /// <returns>The path that it was written to.</returns>
    public static string Write(string report, string end)
    {
        Directory.CreateDirectory(Repository.Reports);
        var name = $"{Today}-{MachineKind}{end}.md";
        File.WriteAllText(Path.Combine(Repository.Reports, name), report);
        return $"benchmarks/reports/{name}";
    }
}
