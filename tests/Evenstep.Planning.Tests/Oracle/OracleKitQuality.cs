namespace Evenstep.Planning.Tests.Oracle;

/// <summary>Q: how much of the powers for which the owned kit does nothing gets a good view.</summary>
internal sealed class OracleKitQuality
{
    private const double LeastNeedPerTelescope = 0.5;

    private readonly OracleSearch search;
    private readonly double serving;
    private readonly double reach;

    /// <param name="search">Whose sets are asked for.</param>
    /// <param name="lnStepAllowed">The logarithm of the largest step that stage 1 lets go on.</param>
    public OracleKitQuality(OracleSearch search, double lnStepAllowed)
    {
        this.search = search;
        serving = OracleLadder.Serving(search.Bench.EnoughStep);
        reach = search.Problem.Has(OracleDefinitions.QualityReach) ? Math.Max(serving, lnStepAllowed / 2) : serving;
    }

    public double Of(int set)
    {
        double good = 0;
        double needed = 0;
        foreach (int telescope in search.Views.Counting)
        {
            double length = search.Bench.Scales[telescope].Length;
            (double quality, double need) = Integrals(search.Views.Of(set, telescope), search.Views.Of(0, telescope), length);
            good += quality / length;
            needed += need / length;
        }

        double floor = search.Problem.Has(OracleDefinitions.QualityFloor) ? LeastNeedPerTelescope * search.Views.Counting.Count : 0;
        double shared = Math.Max(needed, floor);
        return shared > 0 ? good / shared : 0;
    }

    /// <summary>The quality summed up over where the owned views do nothing, and how much of the range that is.</summary>
    private (double Quality, double Need) Integrals(List<OracleView> kit, List<OracleView> owned, double length)
    {
        if (!search.Problem.Has(OracleDefinitions.QualityWhereNeeded))
        {
            owned = [];
        }

        double quality = 0;
        double need = 0;
        List<double> bends = Bends(kit, owned, length);
        for (int i = 1; i < bends.Count; i++)
        {
            double middle = (bends[i - 1] + bends[i]) / 2;
            if (!owned.Exists(view => IsWithin(serving, view, middle)))
            {
                double piece = bends[i] - bends[i - 1];
                need += piece;
                quality += piece * BestAt(kit, middle);
            }
        }

        return (quality, need);
    }

    /// <summary>Between two neighbours of these positions nothing changes.</summary>
    private List<double> Bends(List<OracleView> kit, List<OracleView> owned, double length)
    {
        List<double> bends = [0, length];
        foreach (OracleView view in kit)
        {
            bends.Add(view.Start - reach);
            bends.Add(view.End + reach);
        }

        foreach (OracleView view in owned)
        {
            bends.Add(view.Start - serving);
            bends.Add(view.End + serving);
        }

        bends.RemoveAll(bend => bend < 0 || bend > length);
        bends.Sort();
        return bends;
    }

    private double BestAt(List<OracleView> kit, double position)
    {
        double best = 0;
        foreach (OracleView view in kit)
        {
            if (view.Quality > best && IsWithin(reach, view, position))
            {
                best = view.Quality;
            }
        }

        return best;
    }

    private static bool IsWithin(double reach, OracleView view, double position) =>
        position > view.Start - reach && position < view.End + reach;
}
