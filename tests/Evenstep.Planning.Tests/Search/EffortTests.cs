using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;
using Evenstep.Planning.Tests.Agreement;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Search;

public class EffortTests
{
    private const int Problems = 60;

    /// <summary>More nodes than may pass before a caller who gives up is noticed.</summary>
    private const int ManyNodes = 2000;

    private static readonly Step AnyStep = new(100);

    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(1500)]
    public void So_many_nodes_are_had_and_then_no_more(int nodes)
    {
        var effort = new Effort(nodes, new WorkBudget(Comparison.WorkLimit));
        for (var spent = 0; spent < nodes; spent++)
        {
            Assert.False(effort.IsSpent);
            effort.Spend();
        }

        Assert.True(effort.IsSpent);
    }

    [Fact]
    public void Without_nodes_it_is_spent_from_the_start() => Assert.True(new Effort(0, new WorkBudget(Comparison.WorkLimit)).IsSpent);

    [Fact]
    public void A_caller_who_gives_up_is_noticed_before_long()
    {
        using var caller = new CancellationTokenSource();
        var effort = new Effort(long.MaxValue, new WorkBudget(Comparison.WorkLimit, caller.Token));
        Spend(effort, ManyNodes);
        caller.Cancel();
        Assert.Throws<OperationCanceledException>(() => Spend(effort, ManyNodes));
    }

    [Fact]
    public void A_caller_who_gives_up_ends_a_long_descent()
    {
        using var caller = new CancellationTokenSource();
        caller.Cancel();
        var drawn = RoomyProblem();
        Assert.True(Descents.Run(drawn, AnyStep, new EverySet()).Sets.Count > ManyNodes);
        Assert.Throws<OperationCanceledException>(() => Descents.Run(drawn, AnyStep, new EverySet(), Descents.NoEnd, cancellation: caller.Token));
    }

    [Fact]
    public void A_descent_that_ends_early_has_met_the_first_of_what_it_would_have_met()
    {
        var drawn = RoomyProblem();
        string[] all = [.. Descents.Run(drawn, AnyStep, new EverySet()).Sets.Select(set => set.Name)];
        foreach (var nodes in new[] { 1, 2, 10, 500, 1025 })
        {
            string[] met = [.. Descents.Run(drawn, AnyStep, new EverySet(), nodes).Sets.Select(set => set.Name)];
            Assert.Equal(all[..nodes], met);
        }
    }

    [Fact]
    public void A_search_ends_at_the_same_place_every_time()
    {
        var unfinished = 0;
        foreach (var oracle in Enumerable.Range(0, Problems).Select(RandomProblems.Make))
        {
            foreach (var nodes in new[] { 1, 3, 10 })
            {
                var (once, again) = (Ending(oracle, nodes), Ending(oracle, nodes));
                Assert.Equal(once, again);
                unfinished += once.StartsWith("unfinished", StringComparison.Ordinal) ? 1 : 0;
            }
        }

        Assert.True(unfinished > Problems / 2, $"only {unfinished} ended early");
    }

    [Fact]
    public void What_few_nodes_prove_more_nodes_prove_the_same()
    {
        var proved = 0;
        foreach (var oracle in Enumerable.Range(0, Problems).Select(RandomProblems.Make))
        {
            var ending = Ending(oracle, nodes: 30);
            if (!ending.StartsWith("unfinished", StringComparison.Ordinal))
            {
                Assert.Equal(ending, Ending(oracle, ManyNodes));
                proved++;
            }
        }

        Assert.True(proved > Problems / 5, $"only {proved} are proved in few nodes");
    }

    private static void Spend(Effort effort, int nodes)
    {
        for (var i = 0; i < nodes; i++)
        {
            effort.Spend();
        }
    }

    private static string Ending(OracleProblem oracle, long nodes)
    {
        var result = SearchEngine.Solve(Bridge.ToProblem(oracle), nodes, new WorkBudget(Comparison.WorkLimit));
        return result.Plan is { } plan ? $"plan {string.Join(' ', plan.Purchases)} {plan.Values}"
            : result.HeadStart is { } start ? $"unfinished {start} {string.Join(' ', start.Purchases)}"
            : result.IsNothingAllowed ? "nothing" : "unfinished without anything";
    }

    /// <summary>Eyepieces of which none repeats another and each shows something new.</summary>
    private static Drawn RoomyProblem()
    {
        Item[] catalogue = [.. Enumerable.Range(0, 26).Select(i => Some.Eyepiece(7 + i, id: $"eyepiece-{i:00}"))];
        var problem = Some.Problem(catalogue: [.. catalogue]) with
        {
            Preferences = new Preferences { LeastStep = 1, EnoughStep = 1 },
        };
        return new Drawn(0, RandomProblems.Make(0), problem, new Groundwork(problem, Candidacy.Of(problem), new WorkBudget(Comparison.WorkLimit)));
    }
}
