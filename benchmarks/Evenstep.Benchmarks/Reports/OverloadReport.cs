using System.Globalization;
using Evenstep.Benchmarks.Http;

namespace Evenstep.Benchmarks.Reports;

/// <summary>The part of the report on overload.</summary>
internal static class OverloadReport
{
    private const double P99 = 0.99;

    public static string Of(OverloadResults results)
    {
        var offered = new Table(
            1, "offered, of the peak", "peak a second", "offered a second", "answered a second", "of the peak", "the same a second of processor time",
            "answers p99 ms", "refusals p99 ms", "health p99 ms", "neither");
        foreach (var round in results.Rounds.OrderBy(round => round.Times))
        {
            var small = round.Small;
            offered.Add(
                $"{round.Times} times",
                Numbers.Show(round.Peak.PerSecond),
                Numbers.Show(small.Offered / small.Seconds),
                Numbers.Show(small.Goodput),
                Numbers.Show(small.Goodput / round.Peak.PerSecond),
                Numbers.Show(small.Answered.Length / round.Worked.TotalSeconds / round.Peak.PerProcessorSecond),
                Numbers.Show(OpenResult.P(small.Answered, P99)),
                Numbers.Show(OpenResult.P(small.Refused, P99)),
                Numbers.Show(OpenResult.P(round.Health.Answered, P99)),
                $"{small.Others}");
        }

        var besides = new Table(1, "beside", "offered", "answered", "p50 ms", "p99 ms", "slowest ms", "of the others answered");
        foreach (var round in results.Besides)
        {
            var answered = round.Small.Answered;
            besides.Add(
                round.Beside, $"{round.Small.Offered}", $"{answered.Length}", Numbers.Show(OpenResult.P(answered, 0.5)),
                Numbers.Show(OpenResult.P(answered, P99)),
                Numbers.Show(OpenResult.P(answered, 1)), $"{round.OthersAnswered}");
        }

        return string.Create(CultureInfo.InvariantCulture, $"""
            ## Overload

            The service on one core, with a single processor and no cache, the load on another. Small requests are recommendations over
            {BatchRuns.CatalogueItems} items, no two in a row alike. The peak is what it answers on 32 connections that each wait for their answer,
            measured anew in each round. Requests are offered at a steady rate whatever comes of them; their time counts from when they were due.

            {offered}
            Small requests at {OverloadRuns.SmallPerSecond} a second, all of one address, beside the heaviest over {BatchRuns.CatalogueItems} items (8
            purchases, 4 Barlows), of which {OverloadRuns.Heavies} are under way at any time; and, with a key of its own, beside another key used at
            {OverloadRuns.TimesItsRate} times its rate of {OverloadRuns.KeyPerMinute} a minute:

            {besides}
            When the caller of something heavy leaves, its solve has ended after {Numbers.Show(Numbers.Percentile(results.FreedMs, 0.5))} ms (median of
            {results.FreedMs.Length}), {Numbers.Show(results.FreedMs[^1])} ms at most: then its thread was last seen at work.
            """);
    }
}
