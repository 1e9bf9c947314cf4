using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Tests.Search;

/// <summary>Against all sets below the first node of every bench.</summary>
public class NodeQualityTests
{
    private const int Problems = 250;
    private const int MostOptions = 9;
    private const int MostChosen = 3;
    private const int TargetsPerBench = 4;
    private const double Rounding = 1e-9;

    [Fact]
    public void No_option_is_dropped_that_is_in_a_set_that_would_do()
    {
        var (dropped, kept, hopeless) = (0, 0, 0);
        foreach (var (drawn, bench, measure) in Benches())
        {
            var sets = SetsBelow(drawn, bench, measure);
            var random = new Random(drawn.Seed);
            for (var i = 0; i < TargetsPerBench && sets.Length > 1; i++)
            {
                var node = First(drawn, bench, measure);
                var (towards, before) = (sets[random.Next(sets.Length)], node.OptionCount);
                var lessExcess = random.Next(3) == 0 ? -1 : node.Excess - towards.Excess;
                var moreQuality = random.Next(3) == 0 ? -1 : (towards.Quality - node.Quality) * (0.9 + (0.2 * random.NextDouble()));
                var isLeft = node.Reduce(lessExcess, moreQuality);
                int[] left = isLeft ? [.. node.Options.Take(node.OptionCount).Select(option => option.Place)] : [];
                var wouldDo = sets.Where(set =>
                    node.Excess - set.Excess >= lessExcess + Rounding && set.Quality - node.Quality >= moreQuality + Rounding).ToArray();
                Assert.True(isLeft || wouldDo.Length == 0, $"seed {drawn.Seed}: {wouldDo.Length} sets would do");
                Assert.All(wouldDo, set => Assert.Empty(set.Places.Except(left)));
                hopeless += isLeft ? 0 : 1;
                dropped += isLeft ? before - left.Length : 0;
                kept += wouldDo.Length;
            }
        }

        Assert.True(
            dropped > Problems / 3 && kept > Problems && hopeless > Problems / 10,
            $"{dropped} dropped, {kept} sets kept, {hopeless} times nothing left");
    }

    [Fact]
    public void Asked_for_nothing_nothing_is_dropped()
    {
        foreach (var (drawn, bench, measure) in Benches())
        {
            var node = First(drawn, bench, measure);
            var before = node.OptionCount;
            Assert.True(node.Reduce(0, 0));
            Assert.Equal(before, node.OptionCount);
        }
    }

    [Fact]
    public void No_set_has_more_quality_than_the_most_of_the_node()
    {
        var below = 0;
        foreach (var (drawn, bench, measure) in Benches())
        {
            var most = First(drawn, bench, measure).MostQuality;
            Assert.All(SetsBelow(drawn, bench, measure), set => Assert.True(set.Quality <= most + Rounding));
            below += most < 1 - Rounding ? 1 : 0;
        }

        Assert.True(below > 0);
    }

    [Fact]
    public void The_quality_of_a_node_and_what_an_option_adds_are_those_of_the_kit()
    {
        foreach (var (drawn, bench, measure) in Benches())
        {
            var node = First(drawn, bench, measure);
            var alone = SetsBelow(drawn, bench, measure).Where(set => set.Places.Length == 1).ToDictionary(set => set.Places[0], set => set.Quality);
            Assert.Equal(measure.Of(drawn.KitOf(bench, [])), node.Quality, Rounding);
            node.RefreshQualities();
            foreach (var option in node.Options.Take(node.OptionCount).Where(option => alone.ContainsKey(option.Place)))
            {
                var added = alone[option.Place] - node.Quality;
                Assert.True(added <= option.Quality + Rounding);
                if (bench.SightsOf(option.Place).Length == 1)
                {
                    Assert.Equal(added, option.Quality, Rounding);
                }
            }
        }
    }

    private static IEnumerable<(Drawn Drawn, Bench Bench, QualityMeasure Measure)> Benches() =>
        from drawn in Drawn.Problems(Problems)
        let measure = drawn.Measure()
        from bench in drawn.Benches()
        select (drawn, bench, measure);

    private static Node First(Drawn drawn, Bench bench, QualityMeasure measure)
    {
        var node = Node.Chain(drawn.Ground)[0];
        node.Measure(measure);
        node.Begin(bench, Money.Zero);
        return node;
    }

    /// <summary>Every set of some of the options, whether or not its purchases overlap, with its true figures.</summary>
    private static (int[] Places, double Excess, double Quality)[] SetsBelow(Drawn drawn, Bench bench, QualityMeasure measure)
    {
        var node = First(drawn, bench, measure);
        int[] places = [.. node.Options.Take(node.OptionCount).Select(option => option.Place).Order().Take(MostOptions)];
        var most = Math.Min(node.CountLeft, MostChosen);
        return
        [
            .. Enumerable.Range(0, 1 << places.Length)
                .Where(set => System.Numerics.BitOperations.PopCount((uint)set) <= most)
                .Select(set => places.Where((_, i) => (set & (1 << i)) != 0).ToArray())
                .Select(chosen => (chosen, Kit: drawn.KitOf(bench, chosen)))
                .Select(one => (one.chosen, drawn.FiguresOf(one.Kit).MeanExcess, measure.Of(one.Kit))),
        ];
    }
}
