using System.Text.Json;

namespace Evenstep.Planning.Tests.Oracle.SelfTests;

public sealed class RandomProblemSelfTests
{
    [Fact]
    public void Random_problems_are_repeatable_and_their_order_does_not_matter()
    {
        for (int seed = 0; seed < 150; seed++)
        {
            OracleProblem problem = RandomProblems.Make(seed);
            OracleResult result = Exhaustive.Solve(problem);
            OracleResult shuffled = Exhaustive.Solve(RandomProblems.Shuffle(problem, seed));

            Assert.Equal(JsonSerializer.Serialize(problem), JsonSerializer.Serialize(RandomProblems.Make(seed)));
            Assert.Equal(SetsOf(result), SetsOf(shuffled));
            Assert.Equal(result.Exclusions.OrderBy(pair => pair.Key), shuffled.Exclusions.OrderBy(pair => pair.Key));
            Assert.Equivalent(result.Nearest, shuffled.Nearest);
        }
    }

    private static string[] SetsOf(OracleResult result) => [.. result.BestSets.Select(plan => string.Join(',', plan.Ids))];
}
