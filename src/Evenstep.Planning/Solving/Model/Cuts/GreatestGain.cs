using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model.Cuts;

/// <summary>
/// A bound on what the best choices gain together, within money and number. At any price of money the bound holds that
/// charges each choice for its cents and credits what money there is (Lagrange): some prices are tried.
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
            var (bound, cents) = At(charge, units, settled);
            if (bound < least - 1)
            {
                return true;
            }

            if (cents <= settled.CentsLeft)
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
                : low == 0 ? bound / Math.Max(1, 4.0 * cents)
                : 2 * low;
        }

        return false;
    }

    /// <summary>The bound at a charge of so many units a cent, and what the choices that make it cost.</summary>
    private static (double Bound, long Cents) At(double charge, long[] units, Settled settled)
    {
        Span<(double Gain, long Cents)> best = stackalloc (double, long)[Limits.MostPurchases];
        var count = 0;
        var most = Math.Min(settled.PurchasesLeft, Limits.MostPurchases);
        for (var index = 0; index < units.Length; index++)
        {
            var cents = settled.Choices[index].LeastCents;
            var gain = units[index] - (charge * cents);
            if (gain <= 0 || most == 0 || (count == most && gain <= best[count - 1].Gain))
            {
                continue;
            }

            var at = count < most ? count++ : count - 1;
            for (; at > 0 && best[at - 1].Gain < gain; at--)
            {
                best[at] = best[at - 1];
            }

            best[at] = (gain, cents);
        }

        var (sum, spent) = (charge * settled.CentsLeft, 0L);
        foreach (var (gain, cents) in best[..count])
        {
            sum += gain;
            spent += cents;
        }

        return (sum, spent);
    }
}
