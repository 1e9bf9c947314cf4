using Evenstep.Service.Recommendations;

namespace Evenstep.Service.Tests.Recommendations;

/// <summary>Who gets the next place of the gate, and who must leave: what is told apart is order, never time.</summary>
public sealed class SolvePlacesTests
{
    private static readonly Patience Unhurried = new(100, TimeSpan.FromMinutes(1));

    private readonly SolvePlaces places = Of(2);

    [Fact]
    public async Task A_batch_has_all_places_while_nobody_else_wants_one()
    {
        using var first = await BatchAsync();
        using var second = await BatchAsync();

        Assert.Equal((Tenure.Batch, Tenure.Lodger), (first.Tenure, second.Tenure));
        Assert.False(first.IsBiddenToLeave || second.IsBiddenToLeave);
        Assert.False(BatchAsync().IsCompleted);
    }

    [Fact]
    public async Task A_single_request_has_its_place_at_once_that_a_batch_only_lodges_in()
    {
        using var kept = await BatchAsync();
        var lodger = await BatchAsync();

        var single = SingleAsync();

        Assert.Equal((false, true), (kept.IsBiddenToLeave, lodger.IsBiddenToLeave));
        lodger.Dispose();
        Assert.Equal(Tenure.Single, (await single).Tenure);
    }

    [Fact]
    public async Task A_single_request_goes_before_a_batch_that_has_waited_longer()
    {
        var first = await SingleAsync();
        using var second = await SingleAsync();
        var batch = BatchAsync();
        var single = SingleAsync();

        first.Dispose();

        (await single).Dispose();
        Assert.Equal(Tenure.Batch, (await batch).Tenure);
    }

    [Fact]
    public async Task Who_gave_way_waits_for_a_place_to_stay_in()
    {
        var kept = await BatchAsync();
        var again = places.TakeAsync(Lane.Batch, mayLodge: false, CancellationToken.None);
        Assert.False(again.IsCompleted);
        var behind = await BatchAsync();

        kept.Dispose();

        Assert.Equal((Tenure.Lodger, Tenure.Batch), (behind.Tenure, (await again).Tenure));
    }

    [Fact]
    public async Task A_batch_gets_on_however_many_single_requests_there_are()
    {
        var (first, second) = (await SingleAsync(), await SingleAsync());
        var batch = BatchAsync();
        var singles = Enumerable.Range(0, 2 * SolvePlaces.MostSinglesInARow).Select(_ => SingleAsync()).ToList();

        first.Dispose();
        second.Dispose();
        var before = 0;
        foreach (var single in singles.TakeWhile(_ => !batch.IsCompleted))
        {
            (await single).Dispose();
            before++;
        }

        Assert.InRange(before, SolvePlaces.MostSinglesInARow - 2, SolvePlaces.MostSinglesInARow);
        Assert.Equal(Tenure.Batch, (await batch).Tenure);
    }

    [Fact]
    public async Task With_a_single_place_a_batch_stays_in_it_to_the_end_of_a_solve()
    {
        var only = Of(1);
        using var batch = await only.TakeAsync(Lane.Batch, mayLodge: true, CancellationToken.None);

        var single = only.TakeAsync(Lane.Single, mayLodge: false, CancellationToken.None);

        Assert.Equal((Tenure.Batch, false, false), (batch.Tenure, batch.IsBiddenToLeave, single.IsCompleted));
    }

    [Fact]
    public async Task Work_aside_leaves_for_a_batch_too_and_before_any_lodger()
    {
        using var lodger = await LodgerAsync();
        var aside = places.TryTakeAside()!;

        var batch = BatchAsync();

        Assert.Equal((false, true), (lodger.IsBiddenToLeave, aside.IsBiddenToLeave));
        aside.Dispose();
        Assert.Equal(Tenure.Batch, (await batch).Tenure);
    }

    [Fact]
    public async Task Nobody_more_is_bidden_to_leave_than_there_are_who_wait()
    {
        var four = Of(4);
        SolveStay[] stays = [.. await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => four.TakeAsync(Lane.Batch, mayLodge: true, CancellationToken.None)))];

        _ = four.TakeAsync(Lane.Single, mayLodge: false, CancellationToken.None);
        _ = four.TakeAsync(Lane.Single, mayLodge: false, CancellationToken.None);

        Assert.Single(stays, stay => stay.IsBiddenToLeave);
        Assert.Equal(Tenure.Lodger, stays.Single(stay => stay.IsBiddenToLeave).Tenure);
    }

    [Fact]
    public async Task A_solve_of_a_batch_that_gave_way_is_run_again()
    {
        var gate = new SolveGate(2, Unhurried);
        using var running = new SemaphoreSlim(0);
        using var open = new ManualResetEventSlim();
        var kept = Task.Run(() => gate.RunAsync(_ => Hold(), Lane.Batch, CancellationToken.None));
        await running.WaitAsync();
        List<string> order = [];
        var lodger = Task.Run(() => gate.RunAsync(Lodge, Lane.Batch, CancellationToken.None));
        await running.WaitAsync();

        await gate.RunAsync(() => Note("single"), CancellationToken.None);
        open.Set();

        await Task.WhenAll(kept, lodger);
        Assert.Equal(["began", "single", "ended"], order);

        bool Hold()
        {
            running.Release();
            open.Wait();
            return true;
        }

        bool Lodge(CancellationToken end)
        {
            if (order.Count > 0)
            {
                return Note("ended");
            }

            Note("began");
            running.Release();
            end.WaitHandle.WaitOne();
            throw new OperationCanceledException(end);
        }

        bool Note(string what)
        {
            lock (order)
            {
                order.Add(what);
            }

            return true;
        }
    }

    [Fact]
    public async Task A_solve_that_nobody_waits_for_is_not_run_again()
    {
        var gate = new SolveGate(1, Unhurried);
        using var gone = new CancellationTokenSource();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => gate.RunAsync(
            end =>
            {
                gone.Cancel();
                end.ThrowIfCancellationRequested();
                return 1;
            },
            Lane.Batch,
            gone.Token));

        Assert.Equal((0, 0), (gate.InUse, gate.Waiting));
    }

    private static SolvePlaces Of(int count) => new(count, Unhurried, TimeProvider.System);

    private Task<SolveStay> SingleAsync() => places.TakeAsync(Lane.Single, mayLodge: false, CancellationToken.None);

    private Task<SolveStay> BatchAsync() => places.TakeAsync(Lane.Batch, mayLodge: true, CancellationToken.None);

    /// <summary>A lodger beside a free place.</summary>
    private async Task<SolveStay> LodgerAsync()
    {
        using var kept = await BatchAsync();
        return await BatchAsync();
    }
}
