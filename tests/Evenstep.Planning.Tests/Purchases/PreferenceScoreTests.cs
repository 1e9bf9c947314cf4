using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Purchases;

public sealed class PreferenceScoreTests
{
    [Fact]
    public void A_low_price_is_the_sum_of_the_prices() =>
        Assert.Equal(149.5, Score(Prefer.LowPrice, Some.Eyepiece(20, price: 99.5m), Some.Barlow(2, price: 50)), Tolerance.Value);

    [Fact]
    public void A_wide_field_is_what_is_missing_to_a_hundred_degrees() => Assert.Equal(
        (100 - 68) + 0 + (100 - 42) + 0,
        Score(Prefer.WideField, Some.Eyepiece(20, 68), Some.Eyepiece(10, 110), Some.Zoom(8, 24, 60, 42), Some.Barlow(2)),
        Tolerance.Value);

    [Fact]
    public void A_long_eye_relief_is_what_is_missing_to_twenty_millimetres() => Assert.Equal(
        (20 - 12) + 0 + (20 - 16.5) + 0,
        Score(
            Prefer.LongEyeRelief, Some.Eyepiece(20, eyeReliefMm: 12), Some.Eyepiece(10, eyeReliefMm: 22), Some.Zoom(8, 24, eyeReliefMm: 16.5), Some.Barlow(2)),
        Tolerance.Value);

    [Fact]
    public void A_reticle_eyepiece_counts_as_an_eyepiece() =>
        Assert.Equal(50, Score(Prefer.WideField, Some.Reticle(10)), Tolerance.Value);

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
