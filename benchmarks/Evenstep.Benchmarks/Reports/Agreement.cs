using System.Globalization;
using Evenstep.Benchmarks.Ways;

namespace Evenstep.Benchmarks.Reports;

/// <summary>Whether two ways that both proved their answers gave the same value at every stage.</summary>
internal sealed class Agreement
{
    private const double SameWithin = 1e-6;
    private const int MostListed = 30;

    private static readonly (string Name, Func<StageFigures, double> Value)[] Stages =
    [
        ("largest step", figures => figures.LnLargestStep),
        ("mean excess", figures => figures.MeanExcess),
        ("quality", figures => figures.Quality),
        ("preference", figures => figures.Preference),
        ("price", figures => figures.Price),
    ];

    private readonly List<(string First, string Second, string? Stage, string Text)> comparisons = [];

    public Agreement(IEnumerable<Measurement> measurements)
    {
        foreach (var problem in measurements.Where(run => run.IsProved).GroupBy(run => run.Problem))
        {
            Measurement[] runs = [.. problem.OrderBy(run => Array.FindIndex(AllWays.Listed, way => way.Name == run.Way))];
            for (var i = 0; i < runs.Length; i++)
            {
                comparisons.AddRange(runs[(i + 1)..].Select(other => Compare(runs[i], other)));
            }
        }
    }

    public override string ToString()
    {
        var table = new Table(
            2, ["way", "other way", "both proved", "agree", .. Stages.Select(stage => $"differ in {stage.Name}"), "differ in whether there is a set"]);
        foreach (var pair in comparisons.GroupBy(one => (one.First, one.Second)))
        {
            string[] differing = [.. Stages.Select(stage => Count(pair, stage.Name)), Count(pair, "outcome")];
            table.Add([pair.Key.First, pair.Key.Second, Numbers.Show(pair.Count()), Count(pair, null), .. differing]);
        }

        return $"{table}{Differences()}";
    }

    private string Differences()
    {
        string[] all = [.. comparisons.Where(one => one.Stage is not null).Select(one => $"- {one.Text}\n")];
        var more = all.Length > MostListed ? $"- and {Numbers.Show(all.Length - MostListed)} more\n" : "";
        return all.Length == 0 ? "" : $"\n{string.Concat(all.Take(MostListed))}{more}";
    }

    private static string Count(IEnumerable<(string First, string Second, string? Stage, string Text)> pair, string? stage) =>
        Numbers.Show(pair.Count(one => one.Stage == stage));

    /// <summary>The first stage in which they differ: what comes after it rests on it and says nothing.</summary>
    private static (string First, string Second, string? Stage, string Text) Compare(Measurement a, Measurement b)
    {
        var (x, y) = (a.Answer.Figures!, b.Answer.Figures!);
        if (x.IsInfeasible || y.IsInfeasible)
        {
            return (a.Way, b.Way, x.IsInfeasible == y.IsInfeasible ? null : "outcome", $"{a.Problem}: {Outcome(a)}, {Outcome(b)}");
        }

        foreach (var (name, value) in Stages)
        {
            if (Math.Abs(value(x) - value(y)) > SameWithin)
            {
                var text = string.Create(CultureInfo.InvariantCulture, $"{a.Problem}, {name}: {a.Way} {value(x):R}, {b.Way} {value(y):R}");
                return (a.Way, b.Way, name, text);
            }
        }

        return (a.Way, b.Way, null, "");
    }

    private static string Outcome(Measurement run) => $"{run.Way} finds {(run.Answer.Figures!.IsInfeasible ? "none" : "a set")}";
}
