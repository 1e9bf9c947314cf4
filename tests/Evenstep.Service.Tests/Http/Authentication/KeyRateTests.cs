using Evenstep.Service.Answering.Admission;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Http.Authentication;

namespace Evenstep.Service.Tests.Http.Authentication;

/// <summary>Rates that count work as well as requests. No refill comes while a test runs: one takes a second and more.</summary>
public sealed class KeyRateTests : IDisposable
{
    private readonly KeyRate rate = new(perMinute: 40);

    public void Dispose() => rate.Dispose();

    [Fact]
    public void What_a_request_costs_beyond_itself_is_taken_from_what_is_left()
    {
        Assert.Null(rate.Use());
        rate.Charge(10);

        Assert.InRange(rate.Left, 29, 30);
        Assert.Null(rate.WaitNeeded);
    }

    [Fact]
    public void What_is_not_left_is_owed_and_nothing_is_let_in_before_it_is_paid()
    {
        rate.Charge(45);

        Assert.Equal(0, rate.Left);
        Assert.InRange(rate.WaitNeeded!.Value, TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(7.5));
        Assert.NotNull(rate.Use());
    }

    [Fact]
    public void Nobody_owes_more_than_a_minute()
    {
        rate.Charge(40);
        Assert.Equal(0, rate.Left);
        rate.Charge(1_000_000);

        Assert.InRange(rate.WaitNeeded!.Value, TimeSpan.FromSeconds(30), TimeSpan.FromMinutes(1));
    }

    [Theory]
    [InlineData(0, 5, 40)]
    [InlineData(0.5, 0.4, 40)]
    [InlineData(0.5, 5, 30)]
    public void A_request_counts_as_one_more_for_each_portion_of_work(double unitsPerRequest, double units, int left)
    {
        var claim = new SolveClaim("key shop", SolvePriority.Single);
        claim.Spend(units);

        new WorkCharge(unitsPerRequest).Take(rate, claim);

        Assert.InRange(rate.Left, left, Math.Min(40, left + 2));
    }
}
