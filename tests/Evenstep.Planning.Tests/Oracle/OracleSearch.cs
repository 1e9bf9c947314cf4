using System.Numerics;

namespace Evenstep.Planning.Tests.Oracle;

/// <summary>
/// All sets of candidates of one problem, each a bit mask over <see cref="Candidates"/>, and the five rules
/// that allow a set. What a view, or a pair of views, needs bought is a mask too.
/// </summary>
internal sealed class OracleSearch
{
    public const int DefaultMaxPurchases = 3;
    public const int DefaultMaxBarlows = 1;
    public const double DefaultEnoughStep = 1.5;

    private const int MostCandidates = 20;

    private readonly OracleBench bench;
    private readonly List<SearchView>[] viewsByTelescope;
    private readonly List<(int Needs, int Count)> overlaps;
    private readonly bool includesOnlyCandidates;
    private readonly int mustInclude;
    private readonly int barlows;
    private readonly int reticles;

    public OracleSearch(OracleProblem problem)
    {
        bench = new OracleBench(problem);
        Exclusions = OracleExclusions.Of(bench);
        Candidates = [.. problem.Catalogue.Where(item => !Exclusions.ContainsKey(item.Id))];
        if (Candidates.Count > MostCandidates)
        {
            throw new ArgumentException("Too many candidates to try every set.", nameof(problem));
        }

        barlows = MaskOf(item => item.Kind == OracleKind.Barlow);
        reticles = MaskOf(item => item.IsReticle);
        mustInclude = MaskOf(item => problem.Preferences.MustInclude.Contains(item.Id));
        includesOnlyCandidates = !problem.Preferences.MustInclude.Any(Exclusions.ContainsKey);
        viewsByTelescope = [.. bench.Scales.Select(_ => new List<SearchView>())];
        FillViews();
        overlaps = FindOverlaps();
    }

    public OracleProblem Problem => bench.Problem;

    public OracleBench Bench => bench;

    public IReadOnlyDictionary<string, string> Exclusions { get; }

    public IReadOnlyList<OracleItem> Candidates { get; }

    public double LnEnoughStep => Math.Log(Problem.Preferences.EnoughStep ?? DefaultEnoughStep);

    public IEnumerable<int> AllowedSets()
    {
        if (!includesOnlyCandidates)
        {
            return [];
        }

        return Enumerable.Range(0, 1 << Candidates.Count).Where(IsAllowed);
    }

    public bool IsAllowed(int set) =>
        includesOnlyCandidates
        && ObeysLimitsAndOverlap(set)
        && Holds(set, mustInclude)
        && Problem.Preferences.MustFrame.All(demand => MeetsFrame(set, demand))
        && MeetsReticle(set);

    /// <summary>The first two of the five rules, which every beginning of a buying path must obey.</summary>
    public bool ObeysLimitsAndOverlap(int set) => KeepsLimits(set) && Overlaps(set) <= (Problem.Limits.AllowedOverlaps ?? 0);

    public IEnumerable<OracleItem> Items(int set) => Candidates.Where((_, index) => (set & (1 << index)) != 0);

    public int SetOf(IReadOnlyCollection<string> ids) => MaskOf(item => ids.Contains(item.Id));

    public decimal Price(int set) => Items(set).Sum(item => item.Price);

    public int Barlows(int set) => BitOperations.PopCount((uint)(set & barlows));

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

    /// <summary>The widest true field of the kit in the telescope named, or with null in any; 0 without a usable view.</summary>
    public double WidestField(int set, string? telescope)
    {
        double widest = 0;
        for (int i = 0; i < viewsByTelescope.Length; i++)
        {
            if (telescope is not null && Problem.Telescopes[i].Name != telescope)
            {
                continue;
            }

            foreach (SearchView view in viewsByTelescope[i])
            {
                if (Holds(set, view.Needs))
                {
                    widest = Math.Max(widest, view.View.TrueFieldDeg);
                }
            }
        }

        return widest;
    }

    public OracleKitFigures Figures(int set)
    {
        OracleFigures[] telescopes = new OracleFigures[viewsByTelescope.Length];
        List<(double Start, double End)> intervals = [];
        for (int i = 0; i < telescopes.Length; i++)
        {
            intervals.Clear();
            foreach (SearchView view in viewsByTelescope[i])
            {
                if (Holds(set, view.Needs))
                {
                    intervals.Add((view.View.Start, view.View.End));
                }
            }

            telescopes[i] = OracleLadder.Figures(intervals, bench.Scales[i].Length, LnEnoughStep / 2);
        }

        return new OracleKitFigures(OracleLadder.Combine(telescopes), telescopes);
    }

    private static bool Holds(int set, int needs) => (set & needs) == needs;

    private bool KeepsLimits(int set) =>
        BitOperations.PopCount((uint)set) <= (Problem.Limits.MaxPurchases ?? DefaultMaxPurchases)
        && Barlows(set) <= (Problem.Limits.MaxBarlows ?? DefaultMaxBarlows)
        && BitOperations.PopCount((uint)(set & reticles)) <= 1
        && Price(set) <= Problem.Limits.Budget;

    private bool MeetsFrame(int set, OracleFrame demand)
    {
        double widest = WidestField(set, demand.Telescope);
        return widest > 0 && OracleTolerance.RatioAtLeast(widest, demand.WidthDeg);
    }

    private bool MeetsReticle(int set) =>
        Problem.Preferences.ReticleLeastPower is not { } leastPower
        || bench.HasServingReticle([.. bench.Owned, .. Items(set)], leastPower);

    private int MaskOf(Func<OracleItem, bool> isMeant)
    {
        int mask = 0;
        for (int i = 0; i < Candidates.Count; i++)
        {
            if (isMeant(Candidates[i]))
            {
                mask |= 1 << i;
            }
        }

        return mask;
    }

    private void FillViews()
    {
        Dictionary<string, int> bits = Candidates.Select((item, index) => (item.Id, Bit: 1 << index))
            .ToDictionary(pair => pair.Id, pair => pair.Bit);
        IEnumerable<OracleView> views = bench.UsableViews([.. bench.Owned, .. Candidates]);
        foreach (OracleView view in views.OrderBy(view => view.Start))
        {
            int needs = bits.GetValueOrDefault(view.Eyepiece.Id)
                | (view.Barlow is null ? 0 : bits.GetValueOrDefault(view.Barlow.Id));
            viewsByTelescope[bench.Scales.ToList().IndexOf(view.Scale)].Add(new SearchView(view, needs));
        }
    }

    private List<(int Needs, int Count)> FindOverlaps()
    {
        Dictionary<int, int> counts = [];
        foreach (List<SearchView> views in viewsByTelescope)
        {
            for (int i = 0; i < views.Count; i++)
            {
                for (int j = i + 1; j < views.Count; j++)
                {
                    int needs = views[i].Needs | views[j].Needs;
                    if (needs != 0 && OracleOverlap.Overlap(views[i].View, views[j].View, Problem))
                    {
                        counts[needs] = counts.GetValueOrDefault(needs) + 1;
                    }
                }
            }
        }

        return [.. counts.Select(pair => (pair.Key, pair.Value))];
    }

    private sealed record SearchView(OracleView View, int Needs);
}
