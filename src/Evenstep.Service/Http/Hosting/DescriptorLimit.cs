using System.Globalization;

namespace Evenstep.Service.Http.Hosting;

/// <summary>How many files, sockets among them, the process may have open (Linux: <c>ulimit -n</c>), and how many of them connections may take.</summary>
/// <param name="Most">Of all; the largest number where there is no limit that is known.</param>
internal sealed record DescriptorLimit(int Most)
{
    private const string LimitsFile = "/proc/self/limits";
    private const string Row = "Max open files";
    private const int LeastReserve = 64;
    private const int MostReserve = 256;

    /// <summary>The system gives a new connection the lowest number that is free: from this number on it would take what threads, files and the database
    /// need.</summary>
    public int FirstForOthers => Most - Math.Clamp(Most / 8, LeastReserve, MostReserve);

    public static DescriptorLimit OfProcess() => new(File.Exists(LimitsFile) ? Read(File.ReadAllLines(LimitsFile)) : int.MaxValue);

    /// <summary>The soft limit in what the system says of a process; "unlimited" is none.</summary>
    public static int Read(IEnumerable<string> limits) =>
        limits.FirstOrDefault(line => line.StartsWith(Row, StringComparison.Ordinal)) is { } row
        && int.TryParse(row[Row.Length..].Split(' ', StringSplitOptions.RemoveEmptyEntries)[0], NumberStyles.None, CultureInfo.InvariantCulture, out var most)
            ? most
            : int.MaxValue;
}
