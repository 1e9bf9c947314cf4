using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Tests.Search;

public class CoverTests
{
    private const int Problems = 150;
    private const int SetsPerBench = 6;
    private const int MostPlaces = 4;
    private const double Rounding = 1e-12;

    [Fact]
    public void What_is_covered_is_the_measure_of_the_kit()
    {
        var rising = 0;
        foreach (var (drawn, bench, measure, places) in Sets())
        {
            var cover = CoverOf(drawn, bench, measure, []);
            Assert.Equal(measure.Of(drawn.KitOf(bench, [])), cover.Quality, Rounding);
            foreach (var (count, place) in places.Index())
            {
                var before = cover.Quality;
                AddAll(cover, bench, place);
                Assert.Equal(measure.Of(drawn.KitOf(bench, places[..(count + 1)])), cover.Quality, Rounding);
                Assert.InRange(cover.Quality, before, 1 + Rounding);
                rising += cover.Quality > before + Rounding ? 1 : 0;
            }
        }

        Assert.True(rising > Problems, $"only {rising} oculars are worth anything");
    }

    [Fact]
    public void What_one_view_gains_is_what_it_adds()
    {
        foreach (var (drawn, bench, measure, places) in Sets())
        {
            var cover = CoverOf(drawn, bench, measure, []);
            foreach (var sight in places.SelectMany(place => bench.SightsOf(place).ToArray()))
            {
                var (gain, before) = (cover.GainOf(sight), cover.Quality);
                cover.Add(sight);
                Assert.Equal(gain, cover.Quality - before, Rounding);
                Assert.Equal(0, cover.GainOf(sight), Rounding);
            }
        }
    }

    [Fact]
    public void What_a_view_gains_only_shrinks_as_others_are_added()
    {
        var shrunk = 0;
        foreach (var (drawn, bench, measure, places) in Sets())
        {
            var cover = CoverOf(drawn, bench, measure, []);
            Sight[] all = [.. Enumerable.Range(0, bench.OcularCount).SelectMany(place => bench.SightsOf(place).ToArray())];
            double[] gains = [.. all.Select(sight => cover.GainOf(sight))];
            foreach (var place in places)
            {
                AddAll(cover, bench, place);
                double[] left = [.. all.Select(sight => cover.GainOf(sight))];
                Assert.All(left.Zip(gains), pair => Assert.True(pair.First <= pair.Second + Rounding));
                shrunk += left.Zip(gains).Count(pair => pair.First < pair.Second - Rounding);
                gains = left;
            }
        }

        Assert.True(shrunk > Problems, $"only {shrunk} gains shrink");
    }

    [Fact]
    public void No_set_covers_more_than_the_most()
    {
        var below = 0;
        foreach (var (drawn, bench, measure, places) in Sets())
        {
            for (var known = 0; known <= places.Length; known++)
            {
                var most = CoverOf(drawn, bench, measure, places[..known]).Most(places.Length - known, bench);
                var whole = measure.Of(drawn.KitOf(bench, places));
                Assert.True(whole <= most + Rounding, $"seed {drawn.Seed}: {whole} is more than {most}");
                below += most < 1 - Rounding ? 1 : 0;
            }
        }

        Assert.True(below > Problems, $"only {below} times the most is less than everything");
    }

    [Fact]
    public void A_copy_is_its_own_and_a_cleared_one_covers_nothing()
    {
        foreach (var (drawn, bench, measure, places) in Sets().Where(one => one.Places.Length > 0))
        {
            var (first, second) = (CoverOf(drawn, bench, measure, []), new Cover(measure, drawn.Problem.Telescopes.Length));
            second.CopyFrom(first);
            AddAll(second, bench, places[0]);
            Assert.Equal(measure.Of(drawn.KitOf(bench, [])), first.Quality, Rounding);
            AddAll(first, bench, places[0]);
            Assert.Equal(second.Quality, first.Quality, Rounding);
            first.Clear();
            Assert.Equal(0, first.Quality);
        }
    }

    private static Cover CoverOf(Drawn drawn, Bench bench, QualityMeasure measure, int[] places)
    {
        var cover = new Cover(measure, drawn.Problem.Telescopes.Length);
        foreach (var sight in bench.Shown)
        {
            cover.Add(sight);
        }

        foreach (var place in places)
        {
            AddAll(cover, bench, place);
        }

        return cover;
    }

    private static void AddAll(Cover cover, Bench bench, int place)
    {
        foreach (var sight in bench.SightsOf(place))
        {
            cover.Add(sight);
        }
    }

    private static IEnumerable<(Drawn Drawn, Bench Bench, QualityMeasure Measure, int[] Places)> Sets() =>
        from drawn in Drawn.Problems(Problems)
        let measure = drawn.Measure()
        from bench in drawn.Benches()
        from places in drawn.SetsOfPlaces(SetsPerBench, MostPlaces)
        select (drawn, bench, measure, places);
}
