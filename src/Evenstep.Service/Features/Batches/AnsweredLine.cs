using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Features.Batches;

/// <summary>What became of a line: an answer, or a problem.</summary>
/// <param name="Number">The line's place.</param>
/// <param name="Id">What the caller calls it; null if it does not tell.</param>
/// <param name="Answer">Null for a problem.</param>
/// <param name="Problem">Null for an answer.</param>
internal sealed record AnsweredLine(long Number, string? Id, FinishedAnswer? Answer, ProblemResult? Problem)
{
    public static AnsweredLine Refused(BatchLine line, string? id, ProblemResult problem) => new(line.Number, id, null, problem);
}
