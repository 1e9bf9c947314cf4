using Evenstep.Service.Recommendations;
using Evenstep.Service.Tests.Metrics;

namespace Evenstep.Service.Tests.Certifying;

public sealed class GateTests
{
    private readonly SolveGate gate = new(Patience.Usual);

    [Fact]
    public async Task Work_aside_is_only_done_in_a_place_that_nobody_wants()
    {
        await using (await FullGate.OfAsync(gate))
        {
            Assert.False(gate.TryRunAside(_ => { }, CancellationToken.None));
        }

        Assert.True(gate.TryRunAside(_ => { }, CancellationToken.None));
        Assert.Equal(0, gate.InUse);
    }

    [Fact]
    public async Task Work_aside_is_bidden_to_leave_when_a_solve_wants_its_place()
    {
        var aside = Task.Run(() => gate.TryRunAside(leave => leave.WaitHandle.WaitOne(), CancellationToken.None));
        await Eventually.TrueAsync(() => gate.InUse == 1);

        await using (await FullGate.OfAsync(gate))
        {
            Assert.True(await aside);
        }
    }

    [Fact]
    public async Task Who_waits_is_counted_and_may_leave()
    {
        using var gone = new CancellationTokenSource();
        await using var full = await FullGate.OfAsync(gate);

        var waiting = gate.RunAsync(() => 1, gone.Token);
        Assert.Equal(1, gate.Waiting);
        await gone.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => waiting);
        Assert.Equal(0, gate.Waiting);
    }
}
