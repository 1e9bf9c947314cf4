using System.Globalization;
using System.Runtime.InteropServices;

namespace Evenstep.Benchmarks.Reports;

/// <summary>The report as a file, named by the day and the kind of machine.</summary>
internal static class ReportFile
{
    private static readonly string MachineKind = string.Create(
        CultureInfo.InvariantCulture, $"{Environment.ProcessorCount}-cores-{RuntimeInformation.ProcessArchitecture.ToString().ToLowerInvariant()}");

    private static string Today => TimeProvider.System.GetUtcNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Head(Options options) => $"""
        # Benchmarks of {Today}

        {MachineKind}, {RuntimeInformation.FrameworkDescription}{(options.Quick ? "; a quick look, on few problems" : "")}.

        """;

    /// <summary>The path that it was written to.</summary>
    public static string Write(string report, Options options)
    {
        Directory.CreateDirectory(Repository.Reports);
        var name = $"{Today}-{MachineKind}{options.FileNameEnd}.md";
        File.WriteAllText(Path.Combine(Repository.Reports, name), report);
        return $"benchmarks/reports/{name}";
    }
}
