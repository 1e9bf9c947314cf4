using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Purchases;

public sealed class JumpTests
{
    private static readonly TelescopeInUse From25To200 = Some.InUse(lowest: 25, highest: 200);

    [Fact]
    public void They_lie_between_neighbours_and_at_both_ends()
    {
        var jumps = JumpsOf(Some.Eyepiece(20), Some.Eyepiece(10));
        AssertJumps(jumps, (25, 50, true), (50, 100, false), (100, 200, true));
        Assert.Equal([4.0, 2.0, 4.0], jumps.Select(jump => Math.Round(jump.Ratio, 9)));
    }

    [Fact]
    public void A_jump_at_an_end_counts_twice_and_each_zone_by_its_weight()
    {
        // Exit pupils of 4 to 2 mm weigh 0.9, under 2 mm 1.
        var jumps = JumpsOf(Some.Eyepiece(20), Some.Eyepiece(10));
        Assert.Equal(Math.Pow(2, 2 * 0.9), jumps[0].Weighed.Ratio, Tolerance.Value);
        Assert.Equal(2, jumps[1].Weighed.Ratio, Tolerance.Value);
        Assert.Equal(4, jumps[2].Weighed.Ratio, Tolerance.Value);
    }

    [Fact]
    public void A_jump_of_no_length_is_none() =>
        AssertJumps(JumpsOf(Some.Eyepiece(40), Some.Eyepiece(20), Some.Eyepiece(20, id: "again"), Some.Eyepiece(5)), (25, 50, false), (50, 200, false));

    [Fact]
    public void A_zoom_leaves_no_jump_within_it() =>
        AssertJumps(JumpsOf(Some.Zoom(10, 20), Some.Eyepiece(12), Some.Eyepiece(8)), (25, 50, true), (100, 125, false), (125, 200, true));

    [Fact]
    public void Views_of_no_use_make_no_jumps() =>
        AssertJumps(JumpsOf(Some.Eyepiece(20), Some.Eyepiece(90), Some.Reticle(10)), (25, 50, true), (50, 200, true));

    [Fact]
    public void Without_a_view_there_are_none() => Assert.Empty(JumpsOf(Some.Eyepiece(90)));

    [Fact]
    public void The_widest_of_them_is_the_largest_step()
    {
        var random = new Random(7);
        for (var round = 0; round < 40; round++)
        {
            var ladder = LadderOf([.. Enumerable.Range(0, random.Next(1, 6)).Select(i => RandomItem(random, i))]);
            Assert.Equal(ladder.Figures.LargestStep.Ratio, ladder.Jumps().Max(jump => jump.Weighed.Ratio), ladder.Figures.LargestStep.Ratio * Tolerance.Value);
        }
    }

    [Fact]
    public void The_stretches_served_make_up_the_share_that_is_served()
    {
        var enough = Math.Log(1.25) / 2;
        var random = new Random(8);
        for (var round = 0; round < 40; round++)
        {
            var problem = Some.Problem(From25To200, [.. Enumerable.Range(0, random.Next(0, 6)).Select(i => RandomItem(random, i))]);
            var ladder = Kit.Of(problem with { Preferences = new Preferences { EnoughStep = Math.Exp(2 * enough) } }, []).Ladders[0];
            Reach[] served = [.. ladder.Served];

            Assert.Equal(ladder.Figures.ServedShare * From25To200.Axis.Length, served.Sum(reach => reach.To - reach.From), Tolerance.Value);
            Assert.All(served.Zip(served.Skip(1)), pair => Assert.True(pair.First.To < pair.Second.From));
        }
    }

    [Theory]
    [InlineData(2, true)]
    [InlineData(1.99, false)]
    public void A_step_of_as_much_as_is_enough_is_enough(double enoughStep, bool isEnough) =>
        Assert.Equal(isEnough, new Jump(50, 100, Math.Log(2), JumpPlace.BetweenViews).IsEnough(Step.Of(enoughStep)));

    private static Item RandomItem(Random random, int number)
    {
        var focalLengthMm = 5 + (30 * random.NextDouble());
        return random.Next(4) == 0
            ? Some.Zoom(focalLengthMm / 1.5, focalLengthMm, id: $"item-{number}")
            : Some.Eyepiece(focalLengthMm, id: $"item-{number}");
    }

    private static Ladder LadderOf(params Item[] owned) => Kit.Of(Some.Problem(From25To200, owned: [.. owned]), []).Ladders[0];

    private static Jump[] JumpsOf(params Item[] owned) => [.. LadderOf(owned).Jumps()];

    private static void AssertJumps(Jump[] jumps, params (double From, double To, bool AtEnd)[] expected)
    {
        Assert.Equal(expected.Length, jumps.Length);
        foreach (var (jump, (from, to, atEnd)) in jumps.Zip(expected))
        {
            Assert.Equal(from, jump.FromPower, from * Tolerance.Value);
            Assert.Equal(to, jump.ToPower, to * Tolerance.Value);
            Assert.Equal(atEnd, jump.AtEnd);
        }
    }
}
