namespace Evenstep.Planning.Solving.Search;

/// <summary>What the options of a node could do together.</summary>
internal sealed partial class Node
{
    private bool gainsAreFresh;
    private bool qualitiesAreFresh;

    /// <summary>What the excess comes to at the least, with so many further choices.</summary>
    public double LeastExcess(int choices) => Excess - BestGains(choices, GainIn.Excess);

    /// <summary>What the quality comes to at the most, with all further choices, wherever their views were.</summary>
    public double MostQuality => cover?.Most(CountLeft, bench) ?? 0;

    /// <summary>The most that so many further choices can gain: the sum of the best gains, since each only shrinks as others
    /// are chosen.</summary>
    public double BestGains(int choices, GainIn what)
    {
        steps.Count((1 + choices) * OptionCount);
        Span<double> best = stackalloc double[choices];
        for (var i = 0; i < OptionCount; i++)
        {
            var gain = Options[i].GainOf(what);
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
    public Prospects ProspectsOf(int choices) => new(
        Excess,
        Quality,
        Prospect.Of(this, bench, choices, GainIn.Excess),
        cover is null ? default : Prospect.Of(this, bench, choices, GainIn.Quality));

    /// <summary>Works out anew what all options take off the excess, unless that is just done.</summary>
    public void RefreshGains()
    {
        for (var i = 0; !gainsAreFresh && i < OptionCount; i++)
        {
            Options[i].Gain = GainOf(Options[i].Place);
        }

        gainsAreFresh = true;
    }

    /// <summary>
    /// Drops the options that are in no set below which takes so much off the excess and adds so much to the quality: with each of
    /// them the best of the others together would not do. What is left is worked out anew. False if no such set is left.
    /// </summary>
    /// <param name="lessExcess">What must be taken off; 0 or less for nothing.</param>
    /// <param name="moreQuality">What must be added; 0 or less for nothing.</param>
    public bool Reduce(double lessExcess, double moreQuality)
    {
        if (!KeepThoseThatCould(lessExcess, moreQuality))
        {
            return false;
        }

        if (lessExcess > 0)
        {
            RefreshGains();
        }

        if (moreQuality > 0)
        {
            RefreshQualities();
        }

        return KeepThoseThatCould(lessExcess, moreQuality);
    }

    private bool KeepThoseThatCould(double lessExcess, double moreQuality)
    {
        if ((lessExcess > 0 && BestGains(CountLeft, GainIn.Excess) < lessExcess) || (moreQuality > 0 && BestGains(CountLeft, GainIn.Quality) < moreQuality))
        {
            return false;
        }

        var others = Math.Max(0, CountLeft - 1);
        var leastGain = lessExcess > 0 ? lessExcess - BestGains(others, GainIn.Excess) : double.NegativeInfinity;
        var leastQuality = moreQuality > 0 ? moreQuality - BestGains(others, GainIn.Quality) : double.NegativeInfinity;
        if (leastGain <= 0 && leastQuality <= 0)
        {
            return true;
        }

        var (count, all) = (OptionCount, Options);
        CountLooks(count);
        OptionCount = 0;
        for (var i = 0; i < count; i++)
        {
            if (all[i].Gain >= leastGain && all[i].Quality >= leastQuality)
            {
                Add(all[i]);
            }
        }

        return true;
    }

    /// <summary>The same of what they add to the quality.</summary>
    public void RefreshQualities()
    {
        for (var i = 0; !qualitiesAreFresh && i < OptionCount; i++)
        {
            Options[i].Quality = QualityOf(Options[i].Place);
        }

        qualitiesAreFresh = true;
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

    private double QualityOf(int place)
    {
        var gain = 0.0;
        if (cover is not null)
        {
            var sights = bench.SightsOf(place);
            steps.Count(StepsOfGain * (1 + sights.Length));
            foreach (ref readonly var sight in sights)
            {
                gain += cover.GainOf(sight);
            }
        }

        return gain;
    }
}
