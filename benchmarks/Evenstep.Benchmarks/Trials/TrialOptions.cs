using System.Globalization;

namespace Evenstep.Benchmarks.Trials;

/// <summary>What the command line asks of a trial: <c>trials NAME [--count N] [--minutes M] [--seed S] [--report SUBJECT]</c>.</summary>
/// <param name="Name">Which trial.</param>
/// <param name="Count">How many requests; null for as many as the trial usually sends.</param>
/// <param name="Minutes">How long; null for as long as the trial usually takes.</param>
/// <param name="Seed">What everything is drawn from.</param>
/// <param name="Subject">The end of the report's file name; null for no file.</param>
/// <param name="Settings">Settings for the service, each <c>--set KEY=VALUE</c>.</param>
internal sealed record TrialOptions(string Name, int? Count, double? Minutes, int Seed, string? Subject, IReadOnlyList<(string Key, string Value)> Settings)
{
    public const string Command = "trials";

    public const string Usage = """
        dotnet run -c Release --project benchmarks/Evenstep.Benchmarks -- trials NAME [--count N] [--minutes M] [--seed S] [--set KEY=VALUE]… [--report SUBJECT]

          table      the heaviest requests known, each on a service of its own that is killed after 30 s or at 4 GB
          NAME       one row of that table, by its name
          random     N (3000) random valid requests over every bound of the contract, one after another
          fuzz       N (100,000) bodies and queries drawn from the OpenAPI document and judged by it
          soak       mixed load for M (60) minutes
          overload   requests offered at 1 to 10 times capacity; generator on core 0, service on core 1
          fairness   small requests alone, beside the 20 heaviest, and beside a key at 50 times its rate
          --report   write the report to benchmarks/reports/<date>-<machine kind>-SUBJECT.md
        """;

    /// <summary>Null for a command line that is not understood.</summary>
    public static TrialOptions? Parse(string[] args)
    {
        if (args.Length < 2 || args.Length % 2 != 0
            || args.Skip(2).Chunk(2).Any(pair => pair[0] is not ("--count" or "--minutes" or "--seed" or "--report" or "--set")))
        {
            return null;
        }

        var pairs = args.Skip(2).Chunk(2).Select(pair => (Name: pair[0], Value: pair[1])).ToArray();
        string? Value(string name) => pairs.LastOrDefault(pair => pair.Name == name).Value;
        return new TrialOptions(
            args[1],
            Value("--count") is { } count ? int.Parse(count, CultureInfo.InvariantCulture) : null,
            Value("--minutes") is { } minutes ? double.Parse(minutes, CultureInfo.InvariantCulture) : null,
            Value("--seed") is { } seed ? int.Parse(seed, CultureInfo.InvariantCulture) : 1,
            Value("--report"),
            [.. pairs.Where(pair => pair.Name == "--set").Select(pair => pair.Value.Split('=', 2)).Select(parts => (parts[0], parts[1]))]);
    }
}
