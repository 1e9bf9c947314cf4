using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>Bounds on what the options of a node can do: each of them only gains less as others are chosen.</summary>
/// <param name="Excess">The mean excess now.</param>
/// <param name="LeastExcess">What it comes to at the least, with the best of them.</param>
/// <param name="Least">The least preference and the least price of any that gains something.</param>
/// <param name="PreferenceRate">The least preference that any of them asks for its gain.</param>
/// <param name="PriceRate">The least price, in hundredths, that any of them asks for its gain.</param>
/// <param name="MostGain">Of any of them.</param>
internal readonly record struct Prospect(
    double Excess, double LeastExcess, (long Preference, Money Price) Least, double PreferenceRate, double PriceRate, double MostGain)
{
    /// <summary>Rounding must not make a bound promise too much.</summary>
    private const double Slack = 1e-9;

    /// <summary>What is to be expected of so many further choices at a node.</summary>
    public static Prospect Of(Node node, Bench bench, int choices)
    {
        var (preferenceRate, priceRate, mostGain) = (double.PositiveInfinity, double.PositiveInfinity, 0.0);
        node.CountLooks(node.OptionCount);
        var (leastPreference, leastPrice) = (long.MaxValue, Money.MaxValue);
        foreach (ref readonly var option in node.Options.AsSpan(0, node.OptionCount))
        {
            var (place, gain) = (option.Place, option.Gain);
            if (gain > 0)
            {
                var (preference, price) = (bench.LeastPreference(place), bench.LeastPrice(place));
                (leastPreference, leastPrice) = (Math.Min(leastPreference, preference), Money.Min(leastPrice, price));
                (preferenceRate, priceRate) = (Math.Min(preferenceRate, preference / gain), Math.Min(priceRate, price.Hundredths / gain));
                mostGain = Math.Max(mostGain, gain);
            }
        }

        return new Prospect(node.Excess, node.LeastExcess(choices), (leastPreference, leastPrice), preferenceRate, priceRate, mostGain);
    }

    /// <summary>What must be spent at the least to take so much off the excess.</summary>
    public Cost LeastCostOf(double gain) => gain <= 0 || MostGain == 0
        ? default
        : new Cost(
            Math.Max(Least.Preference, AtLeast(PreferenceRate * gain)),
            Money.Max(Least.Price, new Money(AtLeast(PriceRate * gain))),
            (int)AtLeast(gain / MostGain),
            0);

    private static long AtLeast(double amount) => (long)Math.Ceiling(amount * (1 - Slack));
}
