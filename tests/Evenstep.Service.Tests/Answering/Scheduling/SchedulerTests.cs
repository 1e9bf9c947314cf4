using Evenstep.Service.Answering.Scheduling;
using Microsoft.Extensions.Time.Testing;

namespace Evenstep.Service.Tests.Answering.Scheduling;

/// <summary>Who runs and who yields, on a clock that stands still unless it is told: no thread runs and nothing blocks.</summary>
public sealed class SchedulerTests : IDisposable
{
    private const long Mebibyte = 1024 * 1024;

    private static readonly TimeSpan Millisecond = TimeSpan.FromMilliseconds(1);

    private readonly FakeTimeProvider clock = new();
    private readonly List<string> granted = [];
    private SolveScheduler scheduler;

    public SchedulerTests() => scheduler = Of(slots: 1);

    public void Dispose() => scheduler.Dispose();

    [Fact]
    public void As_many_run_as_there_are_slots_and_the_next_begins_when_one_ends()
    {
        scheduler = Of(slots: 2);
        var first = Add("a", "first");
        Add("a", "second");
        Add("a", "third");

        Assert.Equal((2, 1), (scheduler.Running, scheduler.Waiting));
        scheduler.End(first);
        Assert.Equal(["first", "second", "third"], granted);
    }

    [Fact]
    public void What_runs_alone_never_yields_however_long_it_takes()
    {
        var alone = Add("a", "alone");

        for (var i = 0; i < 5000; i++)
        {
            Assert.False(WorksOn(alone));
        }
    }

    [Fact]
    public void A_new_request_takes_the_slot_of_one_that_has_run_for_long_at_its_next_checkpoint()
    {
        var curve = Add("a", "curve");
        WorkOn(curve, 1000);

        var small = Add("a", "small");
        Assert.Equal(["curve"], granted);
        Assert.True(WorksOn(curve));
        Assert.Equal(["curve", "small"], granted);
        scheduler.End(small);

        Assert.Equal(["curve", "small", "curve"], granted);
        Assert.True(curve.IsRunning);
    }

    [Fact]
    public void Requests_of_one_caller_that_are_equally_short_run_one_after_another()
    {
        var first = Add("a", "first");
        Add("a", "second");

        Assert.False(WorksOn(first));
        Assert.False(WorksOn(first));
        Assert.False(WorksOn(first));
        Assert.True(WorksOn(first));
        Assert.Equal(["first", "second"], granted);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(3.9, 0)]
    [InlineData(4, 1)]
    [InlineData(39.9, 1)]
    [InlineData(40, 2)]
    [InlineData(400, 3)]
    [InlineData(1e7, 3)]
    public void What_has_run_longer_stands_at_a_lower_level(double milliseconds, int level) =>
        Assert.Equal(level, SolveLevels.Of(TimeSpan.FromMilliseconds(milliseconds)));

    [Fact]
    public void A_request_that_comes_back_for_another_solve_stands_where_it_stood()
    {
        var claim = new SolveClaim("a", SolvePriority.Single);
        var first = Add(claim, "first");
        WorkOn(first, 50);
        scheduler.End(first);

        Assert.Equal(2, Add(claim, "second").Level);
    }

    [Fact]
    public void Callers_take_turns_so_that_many_requests_of_one_do_not_crowd_out_the_few_of_another()
    {
        var busy = Add("flood", "flood 0");
        for (var i = 1; i < 50; i++)
        {
            Add("flood", $"flood {i}");
        }

        Add("other", "other");
        clock.Advance(Millisecond);
        scheduler.End(busy);

        Assert.Equal(["flood 0", "other"], granted);
    }

    [Fact]
    public void The_longest_solves_of_two_callers_share_the_time_however_many_each_has()
    {
        var ran = new Dictionary<string, int> { ["few"] = 0, ["many"] = 0 };
        List<ScheduledSolve> solves = [Add("few", "few")];
        solves.AddRange(Enumerable.Range(0, 9).Select(_ => Add("many", "many")));

        for (var i = 0; i < 20_000; i++)
        {
            var running = solves.Single(solve => solve.IsRunning);
            ran[running.Claim.Caller]++;
            WorksOn(running);
        }

        Assert.InRange(ran["few"], 9_000, 11_000);
    }

    [Fact]
    public void Of_one_callers_longest_solves_the_first_goes_on_to_its_end()
    {
        var first = Add(Long("a"), "first");
        Add(Long("a"), "second");

        WorkOn(first, 5000);
        scheduler.End(first);

        Assert.Equal(["first", "second"], granted);
    }

    [Fact]
    public void A_caller_who_was_away_has_saved_nothing_up()
    {
        var steady = Add("steady", "steady");
        WorkOn(steady, 10_000);
        List<ScheduledSolve> solves = [steady, Add("new", "new")];

        var ranByNew = 0;
        for (var i = 0; i < 4_000; i++)
        {
            var running = solves.Single(solve => solve.IsRunning);
            ranByNew += running.Claim.Caller == "new" ? 1 : 0;
            WorksOn(running);
        }

        // What is new is at better levels for its first 400 ms; after that they share.
        Assert.InRange(ranByNew, 1_900, 2_400);
    }

    [Fact]
    public void A_line_of_a_batch_yields_to_a_single_request_even_if_that_has_run_longer()
    {
        var single = Add("a", "single");
        WorkOn(single, 1000);
        var line = Add("a", "line", SolvePriority.Batch);
        Assert.False(WorksOn(single));
        Assert.True(single.IsRunning);

        scheduler.End(single);
        Assert.True(line.IsRunning);
        Add("a", "next");
        Assert.True(WorksOn(line));
        Assert.Equal(["single", "line", "next"], granted);
    }

    [Fact]
    public void An_endless_stream_of_single_requests_leaves_a_batch_its_share()
    {
        var line = Add("a", "line", SolvePriority.Batch);
        var ranByLine = 0;
        var single = Add("a", "single");
        for (var i = 0; i < 10_000; i++)
        {
            if (line.IsRunning)
            {
                ranByLine++;
                WorksOn(line);
                continue;
            }

            clock.Advance(Millisecond);
            var next = Add("a", "single");
            scheduler.End(single);
            single = next;
        }

        Assert.InRange(ranByLine, 500, 1_500);
    }

    [Fact]
    public void Only_some_lines_of_a_batch_are_begun_at_a_time()
    {
        List<ScheduledSolve> lines = [.. Enumerable.Range(0, 20).Select(_ => Add("a", "line", SolvePriority.Batch))];

        for (var i = 0; i < 2_000; i++)
        {
            WorksOn(lines.Single(line => line.IsRunning));
        }

        Assert.Equal(4, lines.Count(line => line.HasBegun));
    }

    [Fact]
    public void The_background_begins_where_a_slot_is_free_and_yields_to_whatever_comes()
    {
        var certificate = Add("", "certificate", SolvePriority.Background);
        Assert.False(WorksOn(certificate));

        // It takes nobody's slot: what comes need not even wait for its checkpoint.
        var line = Add("a", "line", SolvePriority.Batch);
        Assert.Equal(["certificate", "line"], granted);
        Assert.True(WorksOn(certificate));
        WorkOn(line, 1000);
        Assert.False(certificate.IsRunning);

        scheduler.End(line);
        Assert.True(certificate.IsRunning);
    }

    [Theory]
    [InlineData(0.02)]
    [InlineData(0.1)]
    public void The_background_takes_no_more_than_its_share_of_a_processor_over_any_stretch(double share)
    {
        scheduler = Of(slots: 2, share: share);
        var certificate = Add("", "certificate", SolvePriority.Background);
        List<bool> ran = [];
        for (var i = 0; i < 60_000; i++)
        {
            ran.Add(certificate.IsRunning);
            clock.Advance(Millisecond);
            if (certificate.IsRunning)
            {
                scheduler.MustYield(certificate, 0);
            }
        }

        foreach (var length in new[] { 1_000, 10_000, 60_000 })
        {
            var most = Enumerable.Range(0, (60_000 / length * 2) - 1).Max(half => ran.Skip(half * length / 2).Take(length).Count(one => one));
            Assert.InRange(most, 1, (share * length) + ProcessorAllowance.Most.TotalMilliseconds + 1);
        }

        Assert.InRange(ran.Count(one => one), share * 60_000 * 0.9, 60_000);
    }

    [Fact]
    public void A_share_of_nought_ends_the_background_after_its_first_burst()
    {
        scheduler = Of(slots: 1, share: 0);
        var certificate = Add("", "certificate", SolvePriority.Background);
        WorkUntilItYields(certificate);

        clock.Advance(TimeSpan.FromDays(1));

        Assert.False(certificate.IsRunning);
    }

    [Fact]
    public void The_slot_of_a_solve_that_is_silent_is_lent_to_a_better_claim_and_taken_back_at_its_next_checkpoint()
    {
        var certified = Add("a", "certified");
        WorkOn(certified, 1000);
        var small = Add("a", "small");
        Assert.False(small.IsRunning);

        clock.Advance(RunningSolves.Silence + Millisecond);
        Assert.True(small.IsRunning);
        Assert.True(scheduler.MustYield(certified, 0));
        Assert.False(certified.IsRunning);

        scheduler.End(small);
        Assert.True(certified.IsRunning);
    }

    [Fact]
    public void The_slot_of_a_silent_solve_is_not_lent_to_one_that_has_run_as_long()
    {
        Add(Long("a"), "first");
        Add(Long("b"), "second");

        clock.Advance(TimeSpan.FromSeconds(10));

        Assert.Equal(["first"], granted);
    }

    [Fact]
    public void A_request_cancelled_before_its_turn_is_not_begun_and_the_next_is()
    {
        var busy = Add("a", "busy");
        var cancellationToken = Add("a", "gone");
        Add("a", "next");

        Assert.True(scheduler.TryWithdraw(cancellationToken));
        Assert.False(scheduler.TryWithdraw(cancellationToken));
        Assert.False(scheduler.TryWithdraw(busy));
        scheduler.End(busy);

        Assert.Equal(["busy", "next"], granted);
        Assert.Equal((1, 0), (scheduler.Running, scheduler.Waiting));
    }

    [Fact]
    public void A_request_cancelled_while_it_yielded_frees_no_slot_of_others()
    {
        var cancellationToken = Add("a", "gone");
        WorkOn(cancellationToken, 100);
        var small = Add("a", "small");
        Assert.True(WorksOn(cancellationToken));

        scheduler.End(cancellationToken);

        Assert.True(small.IsRunning);
        Assert.Equal((1, 0), (scheduler.Running, scheduler.Waiting));
    }

    [Fact]
    public void Memory_is_left_for_the_eldest_to_end_and_what_would_take_it_waits()
    {
        scheduler = Of(slots: 4, mebibytes: 1024, each: 256);
        var eldest = Add("a", "eldest");
        List<ScheduledSolve> others = [.. Enumerable.Range(0, 3).Select(i => Add("a", $"{i}"))];
        WorkOn(eldest, 10, held: 200 * Mebibyte);
        clock.Advance(RunningSolves.Silence);

        Assert.False(scheduler.MustYield(others[0], 250 * Mebibyte));
        Assert.False(scheduler.MustYield(others[1], 250 * Mebibyte));
        Assert.False(scheduler.MustYield(eldest, 250 * Mebibyte));
        Assert.False(scheduler.MustYield(others[2], 250 * Mebibyte));
        Assert.True(scheduler.MustYield(others[2], 270 * Mebibyte));
        Assert.True(scheduler.MustYield(others[1], 255 * Mebibyte));
        Assert.True(eldest.IsRunning);

        // What is new is begun nonetheless, and the eldest goes on.
        Assert.True(Add("a", "new").IsRunning);
        Assert.False(scheduler.MustYield(eldest, 256 * Mebibyte));
        scheduler.End(eldest);

        Assert.True(others[1].IsRunning);
    }

    [Fact]
    public void Where_one_may_hold_all_they_go_on_one_after_another()
    {
        scheduler = Of(slots: 2, mebibytes: 100, each: 256);
        var first = Add("a", "first");
        var second = Add("b", "second");
        clock.Advance(10 * Millisecond);

        Assert.False(scheduler.MustYield(second, Mebibyte), "it holds little");
        Assert.True(scheduler.MustYield(second, 8 * Mebibyte));
        Assert.False(scheduler.MustYield(first, 8 * Mebibyte));
        scheduler.End(first);

        Assert.True(second.IsRunning);
        Assert.Equal(8 * Mebibyte, scheduler.HeldBytes);
    }

    private SolveScheduler Of(int slots, double share = 0.02, long mebibytes = 1024, long each = 256) =>
        new(slots, new SchedulerSettings(mebibytes * Mebibyte, each * Mebibyte, share), clock);

    /// <summary>A request that has run for a second.</summary>
    private static SolveClaim Long(string caller) => new(caller, SolvePriority.Single) { Ran = TimeSpan.FromSeconds(1) };

    private ScheduledSolve Add(string caller, string name, SolvePriority priority = SolvePriority.Single) => Add(new SolveClaim(caller, priority), name);

    private ScheduledSolve Add(SolveClaim claim, string name)
    {
        var solve = new ScheduledSolve(claim, () => granted.Add(name));
        scheduler.Add(solve);
        return solve;
    }

    /// <summary>Works for a millisecond; whether it must yield then.</summary>
    private bool WorksOn(ScheduledSolve solve, long held = 0)
    {
        Assert.True(solve.IsRunning);
        clock.Advance(Millisecond);
        return scheduler.MustYield(solve, held);
    }

    private void WorkOn(ScheduledSolve solve, int milliseconds, long held = 0)
    {
        for (var i = 0; i < milliseconds; i++)
        {
            Assert.False(WorksOn(solve, held));
        }
    }

    private void WorkUntilItYields(ScheduledSolve solve, int most = 1000)
    {
        for (var i = 0; i < most; i++)
        {
            if (WorksOn(solve))
            {
                return;
            }
        }

        Assert.Fail("It never yielded.");
    }
}
