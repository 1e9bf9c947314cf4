using System.Globalization;
using Evenstep.Benchmarks.Http;

namespace Evenstep.Benchmarks.Reports;

/// <summary>The part of the report on batches.</summary>
internal static class BatchReport
{
    private const double BytesOfMegabyte = 1e6;

    public static string Of(BatchResults results)
    {
        var table = new Table(1, "round", "plans a second", "answers a second", "of the planner's", "processor ms a plan", "processor ms an answer");
        foreach (var (i, round) in results.Rounds.Index())
        {
            table.Add(
                $"{i + 1}",
                Numbers.Show(round.PlannerPerSecond),
                Numbers.Show(round.BatchPerSecond),
                Numbers.Show(round.BatchPerSecond / round.PlannerPerSecond),
                Numbers.Show(round.PlanProcessorMs),
                Numbers.Show(round.AnswerProcessorMs));
        }

        return string.Create(CultureInfo.InvariantCulture, $"""
            ## Batches

            `POST /v1/recommendations/batch` over a stored catalogue of {BatchRuns.CatalogueItems} items, without a cache, client and server on one machine,
            beside the planner alone in one process on the same problems, with as many threads as processors; in turn. A batch of {results.MemoryLines:N0} lines
            took resident memory from {results.ResidentBefore / BytesOfMegabyte:N0} to at most {results.ResidentAfter / BytesOfMegabyte:N0} MB.

            {table}
            """);
    }
}
