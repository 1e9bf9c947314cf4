using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model.Cuts;

/// <summary>
/// A bound on what the best choices gain together, within money and number. At any price of money the bound holds that
/// charges each choice for its hundredths and credits what money there is (Lagrange): some prices are tried.
/// </summary>
internal static class GreatestGain
{
    private const int Trials = 12;
    private const long StepsPerChoice = 4;

    public static bool IsBelow(long least, long[] units, Settled settled)
    {
        if (least <= 0)
        {
            return false;
        }

        var (low, high) = (0.0, double.NaN);
        var charge = 0.0;
        for (var trial = 0; trial < Trials; trial++)
        {
            settled.Space.Budget.Spend(StepsPerChoice * units.Length);
            var (bound, price) = At(charge, units, settled);
            if (bound < least - 1)
            {
                return true;
            }

            if (price <= settled.MoneyLeft)
            {
                if (charge == 0)
                {
                    return false;
                }

                high = charge;
            }
            else
            {
                low = charge;
            }

            charge = !double.IsNaN(high) ? (low + high) / 2
                : low == 0 ? bound / Math.Max(1, 4.0 * price.Hundredths)
                : 2 * low;
        }

        return false;
    }

    /// <summary>The bound at a charge of so many units a hundredth, and what the choices that make it cost.</summary>
    private static (double Bound, Money Price) At(double charge, long[] units, Settled settled)
    {
        Span<(double Gain, Money Price)> best = stackalloc (double, Money)[Limits.MostPurchases];
        var count = 0;
        var most = Math.Min(settled.PurchasesLeft, Limits.MostPurchases);
        for (var index = 0; index < units.Length; index++)
        {
            var price = settled.Choices[index].LeastPrice;
            var gain = units[index] - (charge * price.Hundredths);
            if (gain <= 0 || most == 0 || (count == most && gain <= best[count - 1].Gain))
            {
                continue;
            }

            var at = count < most ? count++ : count - 1;
            for (; at > 0 && best[at - 1].Gain < gain; at--)
            {
                best[at] = best[at - 1];
            }

            best[at] = (gain, price);
        }

        var (sum, spent) = (charge * settled.MoneyLeft.Hundredths, Money.Zero);
        foreach (var (gain, price) in best[..count])
        {
            sum += gain;
            spent += price;
        }

        return (sum, spent);
    }
}
