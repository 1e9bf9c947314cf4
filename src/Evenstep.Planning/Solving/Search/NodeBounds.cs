namespace Evenstep.Planning.Solving.Search;

/// <summary>What the options of a node could do together.</summary>
internal sealed partial class Node
{
    /// <summary>What the excess comes to at the least, with so many further choices.</summary>
    public double LeastExcess(int choices) => Excess - BestGains(choices);

    /// <summary>The most that so many further choices can take off the excess: the sum of the best gains, since each only
    /// shrinks as others are chosen.</summary>
    public double BestGains(int choices)
    {
        steps.Count((1 + choices) * OptionCount);
        Span<double> best = stackalloc double[choices];
        for (var i = 0; i < OptionCount; i++)
        {
            var gain = Options[i].Gain;
            for (var k = 0; k < choices; k++)
            {
                if (gain > best[k])
                {
                    (gain, best[k]) = (best[k], gain);
                }
            }
        }

        var sum = 0.0;
        foreach (var gain in best)
        {
            sum += gain;
        }

        return sum;
    }

    /// <summary>What is to be expected of so many further choices.</summary>
    public Prospect ProspectOf(int choices) => Prospect.Of(this, bench, choices);

    /// <summary>Works the gains of all options out anew, unless they are just worked out.</summary>
    public void RefreshGains()
    {
        if (gainsAreFresh)
        {
            return;
        }

        gainsAreFresh = true;
        for (var i = 0; i < OptionCount; i++)
        {
            Options[i].Gain = GainOf(Options[i].Place);
        }
    }

    private double GainOf(int place)
    {
        var gain = 0.0;
        var sights = bench.SightsOf(place);
        steps.Count(StepsOfGain * (1 + sights.Length));
        foreach (ref readonly var sight in sights)
        {
            gain += islands[sight.Telescope].GainOf(sight.Reach);
        }

        return gain;
    }
}
