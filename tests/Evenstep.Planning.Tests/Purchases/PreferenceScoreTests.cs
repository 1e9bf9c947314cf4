using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Purchases;

public sealed class PreferenceScoreTests
{
    /// <summary>What they prefer is settled by the quality of the views, or is the price itself.</summary>
    [Theory]
    [InlineData(Prefer.Comfort)]
    [InlineData(Prefer.LowPrice)]
    [InlineData(Prefer.WideField)]
    [InlineData(Prefer.LongEyeRelief)]
    public void Only_light_weight_and_parfocality_are_preferred_beyond_good_views(Prefer prefer)
    {
        Item[] plain = [Some.Eyepiece(10, 110, 4), Some.Zoom(8, 24, 60, 42), Some.Reticle(10), Some.Barlow(2)];
        Assert.Equal(0, Score(prefer, [Weighing("light", 150), Grouped("grouped", "one"), .. plain]));
    }

    [Fact]
    public void A_light_weight_is_the_mass_of_all_that_is_bought() => Assert.Equal(
        150 + 90 + 60,
        Score(Prefer.LightWeight, Weighing("a", 150), new Item("b", new Barlow([2], Barrel.Inch125)) { MassGrams = 90 }, Weighing("c", 60)),
        Tolerance.Value);

    [Fact]
    public void A_reticle_eyepiece_counts_as_an_eyepiece()
    {
        var problem = Some.Problem() with { Preferences = new Preferences { Prefer = Prefer.Parfocal } };
        Assert.Equal(2, new PreferenceScore(problem).Of([Some.Reticle(10), Grouped("a", "one"), Grouped("b", "one")]));
    }

    [Theory]
    [InlineData(true, 400 + 150)]
    [InlineData(false, 0 + 150)]
    public void An_unknown_mass_counts_as_the_heaviest_known_of_the_catalogue(bool catalogueHasMass, double expected)
    {
        var owned = Weighing("owned", 2000);
        var problem = Some.Problem(
            owned: [owned], catalogue: [owned, Weighing("unknown", null), .. catalogueHasMass ? [Weighing("heaviest", 400)] : Array.Empty<Item>()]) with
        {
            Preferences = new Preferences { Prefer = Prefer.LightWeight },
        };
        var score = new PreferenceScore(problem).Of([Weighing("unknown", null), Weighing("light", 150)]);
        Assert.Equal(expected, score, Tolerance.Value);
    }

    [Fact]
    public void Parfocal_counts_the_groups_of_all_that_is_owned_and_bought()
    {
        var problem = Some.Problem(owned: [Grouped("a", "one"), Grouped("b", null), Some.Barlow(2)]) with
        {
            Preferences = new Preferences { Prefer = Prefer.Parfocal },
        };
        var score = new PreferenceScore(problem);
        Assert.Equal(2, score.Of([]));
        Assert.Equal(2, score.Of([Grouped("c", "one")]));
        Assert.Equal(3, score.Of([Grouped("c", "two"), Grouped("d", "two")]));
        Assert.Equal(4, score.Of([Grouped("c", null), Grouped("d", null)]));
        Assert.Equal(2, score.Of([new Item("e", new Barlow([3], Barrel.Inch125)) { ParfocalGroup = "three" }]));
        Assert.Equal(3, score.Of([Some.Zoom(8, 24)]));
    }

    [Theory]
    [InlineData(Prefer.Comfort)]
    [InlineData(Prefer.LowPrice)]
    [InlineData(Prefer.WideField)]
    [InlineData(Prefer.LongEyeRelief)]
    [InlineData(Prefer.LightWeight)]
    public void All_others_are_nothing_when_nothing_is_bought(Prefer prefer) => Assert.Equal(0, Score(prefer));

    private static double Score(Prefer prefer, params Item[] purchases)
    {
        var problem = Some.Problem(owned: [Some.Eyepiece(32, 40, 9)], catalogue: [.. purchases]) with
        {
            Preferences = new Preferences { Prefer = prefer },
        };
        var score = new PreferenceScore(problem);
        Assert.Equal(purchases.Sum(score.OfItem), score.Of(purchases), Tolerance.Value);
        return score.Of(purchases);
    }

    private static Item Weighing(string id, double? grams) =>
        new(id, new Eyepiece(20, 50, 16, Barrel.Inch125)) { MassGrams = grams };

    private static Item Grouped(string id, string? group) =>
        new(id, new Eyepiece(20, 50, 16, Barrel.Inch125)) { ParfocalGroup = group };
}
