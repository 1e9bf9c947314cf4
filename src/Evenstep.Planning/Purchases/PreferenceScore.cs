namespace Evenstep.Planning.Purchases;

/// <summary>
/// What a request prefers, as a number to be made least. All but <see cref="Prefer.Parfocal"/> are sums over the
/// purchases.
/// </summary>
public sealed class PreferenceScore
{
    /// <summary>An apparent field, in degrees, that leaves nothing to wish for: common practice, no source.</summary>
    public const double AmpleApparentFieldDeg = 100;

    /// <summary>Eye relief, in mm, that leaves nothing to wish for: common practice, no source.</summary>
    public const double AmpleEyeReliefMm = 20;

    /// <summary>Scores are counted in units of 1e-7: degrees, millimetres, grams and money are given far more coarsely, so that
    /// no two scores that differ become equal.</summary>
    private const double UnitsPerScore = 1e7;

    private readonly PurchaseProblem problem;
    private readonly Lazy<double> unknownMassGrams;

    public PreferenceScore(PurchaseProblem problem)
    {
        this.problem = problem;
        unknownMassGrams = new(() => problem.Catalogue.Except(problem.Owned).Max(item => item.MassGrams) ?? 0);
    }

    public double Of(IReadOnlyCollection<Item> purchases) => problem.Preferences.Prefer == Prefer.Parfocal
        ? ParfocalGroups(purchases)
        : purchases.Sum(OfItem);

    /// <summary>What one purchase adds, in the whole units that both engines count in.</summary>
    internal long UnitsOfItem(Item item) => (long)Math.Round(OfItem(item) * UnitsPerScore);

    /// <summary>What one purchase adds; 0 for <see cref="Prefer.Parfocal"/>, which no single item decides.</summary>
    public double OfItem(Item item) => problem.Preferences.Prefer switch
    {
        Prefer.LowPrice => (double)item.Price,
        Prefer.LightWeight => item.MassGrams ?? unknownMassGrams.Value,
        Prefer.WideField when item.Ocular is { } ocular => Math.Max(0, AmpleApparentFieldDeg - ocular.ApparentFieldAtLongestDeg),
        Prefer.LongEyeRelief when item.Ocular is { } ocular => Math.Max(0, AmpleEyeReliefMm - ocular.EyeReliefMm),
        _ => 0,
    };

    private int ParfocalGroups(IEnumerable<Item> purchases)
    {
        Item[] oculars = [.. problem.Owned.Concat(purchases).Where(item => item.Ocular is not null)];
        return oculars.Count(item => item.ParfocalGroup is null)
            + oculars.Select(item => item.ParfocalGroup).OfType<string>().Distinct().Count();
    }
}
