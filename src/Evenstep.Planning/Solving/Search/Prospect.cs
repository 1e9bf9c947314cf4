using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>What of a set an option makes better.</summary>
internal enum GainIn
{
    /// <summary>It takes off the mean excess.</summary>
    Excess,

    /// <summary>It adds to the measure of quality.</summary>
    Quality,
}

/// <summary>Bounds on what the options of a node gain in one respect: each of them only gains less as others are chosen.</summary>
/// <param name="Together">The most that so many of them gain together.</param>
/// <param name="Least">The least preference and the least price of any that gains something.</param>
/// <param name="PreferenceRate">The least preference that any of them asks for its gain.</param>
/// <param name="PriceRate">The least price, in hundredths, that any of them asks for its gain.</param>
/// <param name="Most">The most that any of them gains.</param>
internal readonly record struct Prospect(
    double Together, (long Preference, Money Price) Least, double PreferenceRate, double PriceRate, double Most)
{
    /// <summary>Rounding must not make a bound promise too much.</summary>
    private const double Slack = 1e-9;

    /// <summary>What is to be expected of so many further choices at a node.</summary>
    public static Prospect Of(Node node, Bench bench, int choices, GainIn what)
    {
        var (preferenceRate, priceRate, most) = (double.PositiveInfinity, double.PositiveInfinity, 0.0);
        node.CountLooks(node.OptionCount);
        var (leastPreference, leastPrice) = (long.MaxValue, Money.MaxValue);
        foreach (ref readonly var option in node.Options.AsSpan(0, node.OptionCount))
        {
            var (place, gain) = (option.Place, option.GainOf(what));
            if (gain > 0)
            {
                var (preference, price) = (bench.LeastPreference(place), bench.LeastPrice(place));
                (leastPreference, leastPrice) = (Math.Min(leastPreference, preference), Money.Min(leastPrice, price));
                (preferenceRate, priceRate) = (Math.Min(preferenceRate, preference / gain), Math.Min(priceRate, price.Hundredths / gain));
                most = Math.Max(most, gain);
            }
        }

        return new Prospect(node.BestGains(choices, what), (leastPreference, leastPrice), preferenceRate, priceRate, most);
    }

    /// <summary>What must be spent at the least to gain so much.</summary>
    public Cost LeastCostOf(double gain) => gain <= 0 || Most == 0
        ? default
        : new Cost(
            Math.Max(Least.Preference, AtLeast(PreferenceRate * gain)),
            Money.Max(Least.Price, new Money(AtLeast(PriceRate * gain))),
            (int)AtLeast(gain / Most),
            0);

    private static long AtLeast(double amount) => (long)Math.Ceiling(amount * (1 - Slack));
}

/// <summary>What a node has, and what is to be expected of so many further choices.</summary>
/// <param name="Excess">The mean excess now.</param>
/// <param name="Quality">The measure of quality now; 0 where it is not asked for.</param>
/// <param name="LessExcess">What may be taken off the excess.</param>
/// <param name="MoreQuality">What may be added to the quality.</param>
internal readonly record struct Prospects(double Excess, double Quality, Prospect LessExcess, Prospect MoreQuality)
{
    public double LeastExcess => Excess - LessExcess.Together;

    public double MostQuality => Quality + MoreQuality.Together;
}
