using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Tests.Search;

public class CostTests
{
    private static readonly Cost[] Few =
    [
        .. from preference in new long[] { 0, 1, 7 }
           from hundredths in new long[] { 0, 2, 5 }
           from count in new[] { 0, 1 }
           from ties in new long[] { 0, 3 }
           select new Cost(preference, new Money(hundredths), count, ties),
    ];

    [Fact]
    public void What_comes_first_decides_and_the_rest_only_where_it_is_equal()
    {
        foreach (var (a, b) in Few.SelectMany(a => Few.Select(b => (a, b))))
        {
            var expected = (a.Preference, a.Price, a.Count, a.Ties).CompareTo((b.Preference, b.Price, b.Count, b.Ties));
            Assert.Equal(expected, Math.Sign(a.CompareTo(b)));
            Assert.Equal(expected < 0, a < b);
            Assert.Equal(expected > 0, a > b);
            Assert.Equal(expected <= 0, a <= b);
            Assert.Equal(expected >= 0, a >= b);
        }
    }

    [Fact]
    public void Everything_known_is_less_than_the_unknown() => Assert.All(Few, cost => Assert.True(cost < Cost.Unknown));

    [Fact]
    public void Each_part_adds_up_alone() =>
        Assert.Equal(new Cost(11, new Money(22), 33, 44), new Cost(1, new Money(2), 3, 4) + new Cost(10, new Money(20), 30, 40));

    [Fact]
    public void Nothing_adds_nothing() => Assert.All(Few, cost => Assert.Equal(cost, cost + default(Cost)));

    /// <summary>So a bound on each part is a bound on the whole.</summary>
    [Fact]
    public void Adding_the_same_to_both_leaves_their_order()
    {
        foreach (var (a, b) in Few.SelectMany(a => Few.Select(b => (a, b))))
        {
            Assert.All(Few, more => Assert.Equal(a < b, a + more < b + more));
        }
    }
}
