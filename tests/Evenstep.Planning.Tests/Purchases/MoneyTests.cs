using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Purchases;

public class MoneyTests
{
    [Theory]
    [InlineData("0", 0)]
    [InlineData("0.01", 1)]
    [InlineData("19.9", 1_990)]
    [InlineData("0.29", 29)]
    [InlineData("1000000.00", 100_000_000)]
    public void An_amount_is_its_hundredths_and_back(string amount, long hundredths)
    {
        var value = decimal.Parse(amount, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(new Money(hundredths), Money.Of(value));
        Assert.Equal(value, Money.Of(value).ToDecimal());
    }

    [Fact]
    public void What_is_finer_than_hundredths_is_dropped() => Assert.Equal(new Money(109), Money.Of(1.0999m));

    [Fact]
    public void Amounts_add_up_and_may_be_overspent()
    {
        Assert.Equal(new Money(30), new Money(10) + new Money(20));
        Assert.Equal(new Money(-10), new Money(10) - new Money(20));
        Assert.Equal(new Money(60), 3 * new Money(20));
        Assert.Equal(new Money(6), new long[] { 1, 2, 3 }.Sum(hundredths => new Money(hundredths)));
        Assert.Equal(Money.Zero, Array.Empty<long>().Sum(hundredths => new Money(hundredths)));
    }

    [Theory]
    [InlineData(-1, 1)]
    [InlineData(1, 1)]
    [InlineData(2, 1)]
    public void Amounts_are_ordered_as_their_hundredths(long a, long b)
    {
        var (one, other) = (new Money(a), new Money(b));
        Assert.Equal(a < b, one < other);
        Assert.Equal(a > b, one > other);
        Assert.Equal(a <= b, one <= other);
        Assert.Equal(a >= b, one >= other);
        Assert.Equal(a.CompareTo(b), one.CompareTo(other));
        Assert.Equal((new Money(Math.Min(a, b)), new Money(Math.Max(a, b))), (Money.Min(one, other), Money.Max(one, other)));
    }

    [Fact]
    public void A_sum_that_no_number_holds_is_an_error() => Assert.Throws<OverflowException>(() => Money.MaxValue + Money.Smallest);
}
