using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Purchases;

public sealed class ReticleTests
{
    private static readonly TelescopeInUse From25To200 = Some.InUse(lowest: 25, highest: 200);

    [Fact]
    public void Its_power_is_the_highest_of_any_telescope_alone_or_through_a_barlow()
    {
        var longer = Some.InUse(Some.Telescope(focalLengthMm: 2000), 25, 200);
        var reticle = Some.Reticle(12.5);
        Assert.Equal(80, Reticle.HighestPower(reticle, [], [From25To200]));
        Assert.Equal(160, Reticle.HighestPower(reticle, [], [From25To200, longer]));
        Assert.Equal(240, Reticle.HighestPower(reticle, [Some.Barlow(2), Some.BarlowOf([1.5, 3])], [From25To200]));
    }

    [Fact]
    public void Only_barlows_that_fit_count()
    {
        var wide = Some.InUse(Some.Telescope(focuser: Barrel.Inch2), 25, 200);
        var reticle = Some.Reticle(12.5);
        Item[] wideBarlow = [Some.Barlow(2, barrel: Barrel.Inch2)];
        Assert.Equal(80, Reticle.HighestPower(reticle, wideBarlow, [From25To200]));
        Assert.Equal(160, Reticle.HighestPower(reticle, wideBarlow, [wide]));
        Assert.Equal(80, Reticle.HighestPower(Some.Reticle(12.5, barrel: Barrel.Inch2), [Some.Barlow(2)], [wide]));
    }

    [Fact]
    public void One_that_fits_no_telescope_has_none() =>
        Assert.Null(Reticle.HighestPower(Some.Reticle(12.5, barrel: Barrel.Inch2), [], [From25To200]));

    [Fact]
    public void A_kit_has_the_power_of_its_best_reticle_eyepiece_through_its_own_barlows()
    {
        var problem = Some.Problem(From25To200, owned: [Some.Reticle(20), Some.Barlow(2)]);
        Assert.Equal(100, Kit.Of(problem, []).ReticlePower());
        Assert.Equal(200, Kit.Of(problem, [Some.Reticle(10)]).ReticlePower());
        Assert.Equal(150, Kit.Of(problem, [Some.Barlow(3)]).ReticlePower());
        Assert.Null(Kit.Of(Some.Problem(From25To200, owned: [Some.Eyepiece(20)]), []).ReticlePower());
    }

    [Theory]
    [InlineData(null, Excluded.Reticle)]
    [InlineData(100.0, null)] // exactly
    [InlineData(101.0, Excluded.OutsidePowerRange)]
    public void One_is_a_candidate_if_asked_for_and_strong_enough(double? leastPower, Excluded? expected) =>
        Assert.Equal(expected, ReasonAgainst(Some.Reticle(10), leastPower, owned: [], others: []));

    [Theory]
    [InlineData(50.0, Excluded.Reticle)]
    [InlineData(51.0, null)]
    public void One_is_no_candidate_if_an_owned_one_serves(double leastPower, Excluded? expected) =>
        Assert.Equal(expected, ReasonAgainst(Some.Reticle(10), leastPower, owned: [Some.Reticle(20)], others: []));

    [Fact]
    public void A_barlow_owned_or_for_sale_helps_it_even_an_excluded_one()
    {
        const double LeastPower = 180;
        var soldOut = new Item("sold-out", new Barlow([2], Barrel.Inch125)) { InStock = false };
        Assert.Equal(Excluded.OutsidePowerRange, ReasonAgainst(Some.Reticle(10), LeastPower, owned: [], others: []));
        Assert.Null(ReasonAgainst(Some.Reticle(10), LeastPower, owned: [Some.Barlow(2)], others: []));
        Assert.Null(ReasonAgainst(Some.Reticle(10), LeastPower, owned: [], others: [soldOut]));
    }

    [Fact]
    public void It_is_not_asked_for_eye_relief_field_or_steps()
    {
        var reticle = new Item("reticle", new Eyepiece(10, 20, 0, Barrel.Inch125) { Purpose = EyepiecePurpose.Reticle });
        var problem = Some.Problem(From25To200, owned: [Some.Eyepiece(10)], catalogue: [reticle]) with
        {
            Preferences = new Preferences { LeastApparentFieldDeg = 60 },
            Demands = new Demands { ReticleLeastPower = 100 },
        };
        Assert.Equal(reticle, Assert.Single(Candidacy.Of(problem).Candidates));
        Assert.Single(Kit.Of(problem, [reticle]).Ladders[0].Views);
    }

    private static Excluded? ReasonAgainst(Item item, double? leastPower, Item[] owned, Item[] others)
    {
        var problem = Some.Problem(From25To200, owned: [.. owned], catalogue: [item, .. others]) with
        {
            Demands = new Demands { ReticleLeastPower = leastPower },
        };
        return Candidacy.Of(problem).ExclusionOf(item)?.Reason;
    }
}
