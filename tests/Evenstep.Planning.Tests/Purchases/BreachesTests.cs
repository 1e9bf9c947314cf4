using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Purchases;

public sealed class BreachesTests
{
    private static readonly TelescopeInUse From25To200 = Some.InUse(lowest: 25, highest: 200);

    private static readonly PurchaseProblem Problem = Some.Problem(From25To200, owned: [Some.Eyepiece(20)]);

    [Fact]
    public void Buying_nothing_breaks_no_rule_if_nothing_is_demanded() => AssertBreaches(Problem, []);

    [Fact]
    public void The_prices_may_reach_the_budget_and_not_exceed_it()
    {
        Item[] items = [Some.Eyepiece(10, price: 60), Some.Eyepiece(5, price: 40.01m)];
        AssertBreaches(Problem with { Limits = new Limits { Budget = 100.01m } }, items);
        AssertBreaches(Problem with { Limits = new Limits { Budget = 100 } }, items, new Breach.Budget(100.01m, 100));
    }

    [Fact]
    public void There_may_be_so_many_purchases()
    {
        Item[] items = [Some.Eyepiece(10), Some.Eyepiece(5), Some.Eyepiece(14), Some.Eyepiece(7)];
        AssertBreaches(Problem, items[..3]);
        AssertBreaches(Problem, items, new Breach.MaxPurchases(4, 3));
    }

    [Fact]
    public void There_may_be_so_many_barlows()
    {
        Item[] items = [Some.Barlow(2), Some.Barlow(3)];
        AssertBreaches(Problem, items[..1]);
        AssertBreaches(Problem, items, new Breach.MaxBarlows(2, 1));
    }

    [Fact]
    public void There_is_at_most_one_reticle_eyepiece_bought()
    {
        AssertBreaches(Problem, [Some.Reticle(10)]);
        AssertBreaches(Problem, [Some.Reticle(10), Some.Reticle(12)], new Breach.Reticles(2));
    }

    [Fact]
    public void Overlaps_are_counted_over_all_telescopes()
    {
        Item[] items = [Some.Eyepiece(21)];
        AssertBreaches(Problem, items, new Breach.Overlaps(1, 0));
        AssertBreaches(Problem with { Limits = new Limits { Budget = 1000, AllowedOverlaps = 1 } }, items);
        AssertBreaches(Problem with { Telescopes = [From25To200, From25To200] }, items, new Breach.Overlaps(2, 0));
    }

    [Fact]
    public void What_must_be_bought_is_bought()
    {
        var problem = Problem with { Demands = new Demands { MustInclude = ["eyepiece-5", "eyepiece-10"] } };
        AssertBreaches(problem, [Some.Eyepiece(10), Some.Eyepiece(5)]);
        AssertBreaches(problem, [Some.Eyepiece(10)], new Breach.MustInclude("eyepiece-5"));
        AssertBreaches(problem, [], new Breach.MustInclude("eyepiece-10"), new Breach.MustInclude("eyepiece-5"));
    }

    [Theory]
    [InlineData(1.0, null, true)] // exactly the 50 degrees of the 20 mm at 50x
    [InlineData(1.01, null, true)] // the other telescope shows twice as much
    [InlineData(2.01, null, false)]
    [InlineData(1.01, 0, false)]
    [InlineData(1.01, 1, true)]
    public void What_must_be_framed_is_framed_in_the_telescope_named_or_in_any(double widthDeg, int? telescope, bool framed)
    {
        var framing = new FramingDemand("a nebula", widthDeg, telescope);
        var problem = Problem with
        {
            Telescopes = [From25To200, Some.InUse(Some.Telescope(focalLengthMm: 500), 25, 200)],
            Demands = new Demands { MustFrame = [framing] },
        };
        AssertBreaches(problem, [], framed ? [] : [new Breach.MustFrame(framing)]);
    }

    [Fact]
    public void An_unusable_view_frames_nothing()
    {
        // 60 mm would show 3 degrees at 17x, which is below the range.
        var framing = new FramingDemand(null, 2);
        var problem = Problem with { Demands = new Demands { MustFrame = [framing] } };
        AssertBreaches(problem, [Some.Eyepiece(60)], new Breach.MustFrame(framing));
        AssertBreaches(problem, [Some.Eyepiece(40)]);
    }

    [Fact]
    public void A_reticle_eyepiece_reaches_the_power_asked()
    {
        var problem = Problem with { Demands = new Demands { ReticleLeastPower = 150 } };
        AssertBreaches(problem, [], new Breach.Reticle(150));
        AssertBreaches(problem, [Some.Reticle(10)], new Breach.Reticle(150));
        AssertBreaches(problem, [Some.Reticle(10), Some.Barlow(1.5)]);
        AssertBreaches(problem with { Owned = [Some.Reticle(5)] }, []);
    }

    [Fact]
    public void Every_rule_broken_is_named()
    {
        var problem = Problem with
        {
            Limits = new Limits { Budget = 50, MaxPurchases = 1, MaxBarlows = 0 },
            Demands = new Demands { MustInclude = ["another"], MustFrame = [new FramingDemand(null, 9)], ReticleLeastPower = 100 },
        };
        AssertBreaches(
            problem,
            [Some.Eyepiece(10), Some.Barlow(2)],
            new Breach.Budget(200, 50),
            new Breach.MaxPurchases(2, 1),
            new Breach.MaxBarlows(1, 0),
            new Breach.Overlaps(1, 0),
            new Breach.MustInclude("another"),
            new Breach.MustFrame(new FramingDemand(null, 9)),
            new Breach.Reticle(100));
    }

    private static void AssertBreaches(PurchaseProblem problem, Item[] purchases, params Breach[] expected) =>
        Assert.Equal(expected, Breaches.Of(Kit.Of(problem, purchases)));
}
