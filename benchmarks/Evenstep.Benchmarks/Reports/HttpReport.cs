using System.Globalization;
using Evenstep.Benchmarks.Http;

namespace Evenstep.Benchmarks.Reports;

/// <summary>The part of the report on the service over HTTP.</summary>
internal static class HttpReport
{
    public static string Of(HttpResults results, Options options)
    {
        var table = new Table(
            1, "answers", "p50 ms, 1 connection", "p99 ms, 1 connection", "times the floor's p50", "a second, 8 connections", "p99 ms, 8 connections",
            "of the floor's", "requests", "failures");
        foreach (var target in results.Service.Append(results.Floor))
        {
            AddRow(table, target, results.Floor);
        }

        return string.Create(CultureInfo.InvariantCulture, $"""
            ## The service over HTTP

            `POST {HttpRuns.Path}` on the loopback address, over the demo catalogue (116 items) and invented ones of 300 and 3000 items that the service read at
            start, client and server on one machine, measured by {results.Tool.Name}, {options.Load.TotalSeconds} s each after {options.WarmUp.TotalSeconds} s
            of warm-up.{results.Tool.Remark} The floor is the same web stack with the same settings that reads the request and sends {results.AnswerBytes:N0}
            bytes prepared beforehand, as many as the answer to the repeated request.

            {table}
            """);
    }

    private static void AddRow(Table table, TargetResult target, TargetResult floor) => table.Add(
        target.Target,
        Numbers.Show(target.Alone.P50Ms),
        Numbers.Show(target.Alone.P99Ms),
        Numbers.Show(target.Alone.P50Ms / floor.Alone.P50Ms),
        Numbers.Show(target.Together.PerSecond),
        Numbers.Show(target.Together.P99Ms),
        Numbers.Show(target.Together.PerSecond / floor.Together.PerSecond),
        Numbers.Show(target.Alone.Requests + target.Together.Requests),
        Numbers.Show(target.Alone.Failures + target.Together.Failures));
}
