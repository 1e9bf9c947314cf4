namespace Evenstep.Planning.Tests.Oracle;

/// <summary>
/// The usable views that owned items and candidates can make, by telescope. A set of candidates is a bit mask, and so
/// is what a view, or a pair of views, needs bought.
/// </summary>
internal sealed class OracleViews
{
    private readonly OracleBench bench;
    private readonly List<(OracleView View, int Needs)>[] byTelescope;
    private readonly List<(int Needs, int Count)> overlaps;

    public OracleViews(OracleBench bench, IReadOnlyList<OracleItem> candidates)
    {
        this.bench = bench;
        Dictionary<string, int> bits = [];
        for (int i = 0; i < candidates.Count; i++)
        {
            bits.Add(candidates[i].Id, 1 << i);
        }

        OracleView[] views = [.. bench.UsableViews([.. bench.Owned, .. candidates]).OrderBy(view => view.Start)];
        byTelescope = [.. bench.Scales.Select(scale => views.Where(view => view.Scale == scale).Select(view => (view, Needs(view, bits))).ToList())];
        Counting = WhichCount();
        overlaps = FindOverlaps();
    }

    /// <summary>The telescopes that count in choosing, by their indices: those that something serves, or all if nothing serves any.</summary>
    public IReadOnlyList<int> Counting { get; }

    public static bool Holds(int set, int needs) => (set & needs) == needs;

    public int Overlaps(int set)
    {
        int count = 0;
        foreach ((int needs, int pairs) in overlaps)
        {
            if (Holds(set, needs))
            {
                count += pairs;
            }
        }

        return count;
    }

    /// <summary>The usable views of the kit in one telescope, in order of their starts.</summary>
    public List<OracleView> Of(int set, int telescope)
    {
        List<OracleView> views = [];
        foreach ((OracleView view, int needs) in byTelescope[telescope])
        {
            if (Holds(set, needs))
            {
                views.Add(view);
            }
        }

        return views;
    }

    /// <summary>The widest true field of the kit in the telescope named, or with null in any; 0 without a usable view.</summary>
    public double WidestField(int set, string? telescope)
    {
        double widest = 0;
        for (int i = 0; i < byTelescope.Length; i++)
        {
            if (telescope is not null && bench.Scales[i].Telescope.Name != telescope)
            {
                continue;
            }

            foreach ((OracleView view, int needs) in byTelescope[i])
            {
                if (Holds(set, needs))
                {
                    widest = Math.Max(widest, view.TrueFieldDeg);
                }
            }
        }

        return widest;
    }

    public OracleKitFigures Figures(int set) => bench.Figures([.. bench.Scales.Select((_, telescope) => Of(set, telescope))], Counting);

    private static int Needs(OracleView view, Dictionary<string, int> bits) =>
        bits.GetValueOrDefault(view.Eyepiece.Id) | (view.Barlow is null ? 0 : bits.GetValueOrDefault(view.Barlow.Id));

    private int[] WhichCount()
    {
        int[] all = [.. Enumerable.Range(0, byTelescope.Length)];
        int[] served = [.. all.Where(telescope => byTelescope[telescope].Count > 0)];
        return served.Length == 0 || !bench.Problem.Has(OracleDefinitions.Aside) ? all : served;
    }

    private List<(int Needs, int Count)> FindOverlaps()
    {
        Dictionary<int, int> counts = [];
        foreach (List<(OracleView View, int Needs)> views in byTelescope)
        {
            for (int i = 0; i < views.Count; i++)
            {
                for (int j = i + 1; j < views.Count; j++)
                {
                    int needs = views[i].Needs | views[j].Needs;
                    if (needs != 0 && OracleOverlap.Overlap(views[i].View, views[j].View))
                    {
                        counts[needs] = counts.GetValueOrDefault(needs) + 1;
                    }
                }
            }
        }

        return [.. counts.Select(pair => (pair.Key, pair.Value))];
    }
}
