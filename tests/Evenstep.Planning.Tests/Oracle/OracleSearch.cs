using System.Numerics;

namespace Evenstep.Planning.Tests.Oracle;

/// <summary>
/// All sets of candidates of one problem, each a bit mask over <see cref="Candidates"/>, and the five rules
/// that allow a set.
/// </summary>
internal sealed class OracleSearch
{
    public const int DefaultMaxPurchases = 3;
    public const int DefaultMaxBarlows = 1;

    private const int MostCandidates = 20;

    private readonly bool includesOnlyCandidates;
    private readonly int mustInclude;
    private readonly int barlows;
    private readonly int reticles;

    public OracleSearch(OracleProblem problem)
    {
        Bench = new OracleBench(problem);
        problem = Bench.Problem;
        Exclusions = OracleExclusions.Of(Bench);
        Candidates = [.. problem.Catalogue.Where(item => !Exclusions.ContainsKey(item.Id))];
        if (Candidates.Count > MostCandidates)
        {
            throw new ArgumentException("Too many candidates to try every set.", nameof(problem));
        }

        barlows = MaskOf(item => item.Kind == OracleKind.Barlow);
        reticles = MaskOf(item => item.IsReticle);
        mustInclude = MaskOf(item => problem.Preferences.MustInclude.Contains(item.Id));
        includesOnlyCandidates = !problem.Preferences.MustInclude.Any(Exclusions.ContainsKey);
        Views = new OracleViews(Bench, Candidates);
    }

    public OracleProblem Problem => Bench.Problem;

    public OracleBench Bench { get; }

    public IReadOnlyDictionary<string, string> Exclusions { get; }

    public IReadOnlyList<OracleItem> Candidates { get; }

    public OracleViews Views { get; }

    /// <summary>E, the logarithm of the step that is enough.</summary>
    public double LnEnoughStep => Problem.Has(OracleDefinitions.EnoughStep) ? Math.Log(Bench.EnoughStep) : 0;

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
        && OracleViews.Holds(set, mustInclude)
        && Problem.Preferences.MustFrame.All(demand => MeetsFrame(set, demand))
        && MeetsReticle(set);

    /// <summary>The first two of the five rules, which every beginning of a buying path must obey.</summary>
    public bool ObeysLimitsAndOverlap(int set) => KeepsLimits(set) && Overlaps(set) <= (Problem.Limits.AllowedOverlaps ?? 0);

    public IEnumerable<OracleItem> Items(int set) => Candidates.Where((_, index) => (set & (1 << index)) != 0);

    public int SetOf(IReadOnlyCollection<string> ids) => MaskOf(item => ids.Contains(item.Id));

    public decimal Price(int set)
    {
        decimal price = 0;
        for (int i = 0; i < Candidates.Count; i++)
        {
            price += (set & (1 << i)) != 0 ? Candidates[i].Price : 0;
        }

        return price;
    }

    public int Barlows(int set) => BitOperations.PopCount((uint)(set & barlows));

    public int Overlaps(int set) => Views.Overlaps(set);

    /// <summary>The widest true field of the kit in the telescope named, or with null in any; 0 without a usable view.</summary>
    public double WidestField(int set, string? telescope) => Views.WidestField(set, telescope);

    public OracleKitFigures Figures(int set) => Views.Figures(set);

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
        || Bench.HasServingReticle([.. Bench.Owned, .. Items(set)], leastPower);

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
}
