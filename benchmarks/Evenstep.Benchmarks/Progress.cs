using System.Globalization;

namespace Evenstep.Benchmarks;

/// <summary>Tells whoever waits how far the run is, aside from the report.</summary>
internal static class Progress
{
    private static readonly long Started = TimeProvider.System.GetTimestamp();

    public static void Tell(string what) => Console.Error.WriteLine(
        string.Create(CultureInfo.InvariantCulture, $"[{TimeProvider.System.GetElapsedTime(Started):mm\\:ss}] {what}"));
}
