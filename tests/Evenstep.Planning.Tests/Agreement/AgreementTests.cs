using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Agreement;

/// <summary>The planner against an exhaustive solver that was written from the definitions by someone who had not seen it.</summary>
public class AgreementTests
{
    private const int BatchCount = 12;
    private const int ProblemsPerBatch = 500;

    public static TheoryData<int> Batches => [.. Enumerable.Range(0, BatchCount)];

    [Theory]
    [MemberData(nameof(Batches))]
    public void The_planner_agrees_with_exhaustive_search(int batch)
    {
        var seeds = Enumerable.Range(batch * ProblemsPerBatch, ProblemsPerBatch);
        var faults = seeds.SelectMany(seed => Comparison.Differences(RandomProblems.Make(seed)).Select(fault => $"seed {seed}: {fault}"));
        Assert.Empty(faults.Take(20));
    }
}
