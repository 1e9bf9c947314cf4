namespace Evenstep.Planning.Purchases;

/// <summary>
/// What a request prefers beyond good views, as a number to be made least: the mass bought, in grams, or the number of
/// parfocal groups in the kit. 0 for what prefers neither.
/// </summary>
public sealed class PreferenceScore
{
    /// <summary>Scores are counted in units of 1e-7: grams are given far more coarsely, so that no two scores that differ become equal.</summary>
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
    public double OfItem(Item item) => problem.Preferences.Prefer == Prefer.LightWeight ? item.MassGrams ?? unknownMassGrams.Value : 0;

    private int ParfocalGroups(IEnumerable<Item> purchases)
    {
        Item[] oculars = [.. problem.Owned.Concat(purchases).Where(item => item.Ocular is not null)];
        return oculars.Count(item => item.ParfocalGroup is null)
            + oculars.Select(item => item.ParfocalGroup).OfType<string>().Distinct().Count();
    }
}
