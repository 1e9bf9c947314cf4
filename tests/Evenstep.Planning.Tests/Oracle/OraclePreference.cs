namespace Evenstep.Planning.Tests.Oracle;

/// <summary>What the request prefers, as a number of which less is better.</summary>
internal static class OraclePreference
{
    private const double WideFieldDeg = 100;
    private const double LongEyeReliefMm = 20;

    public static double Value(OracleBench bench, IReadOnlyList<OracleItem> bought)
    {
        IEnumerable<OracleItem> eyepieces = bought.Where(item => item.Kind != OracleKind.Barlow);
        return (bench.Problem.Preferences.Prefer ?? OraclePrefer.LowPrice) switch
        {
            OraclePrefer.WideField => eyepieces.Sum(item => Math.Max(0, WideFieldDeg - ApparentField(item))),
            OraclePrefer.LongEyeRelief => eyepieces.Sum(item => Math.Max(0, LongEyeReliefMm - item.EyeReliefMm)),
            OraclePrefer.LightWeight => Mass(bench, bought),
            OraclePrefer.Parfocal => ParfocalGroups([.. bench.Owned, .. bought]),
            _ => (double)bought.Sum(item => item.Price),
        };
    }

    private static double ApparentField(OracleItem item) =>
        item.Kind == OracleKind.Zoom ? item.ApparentFieldAtLongestDeg : item.ApparentFieldDeg;

    private static double Mass(OracleBench bench, IReadOnlyList<OracleItem> bought)
    {
        double heaviestKnown = bench.Problem.Catalogue.Where(item => !bench.IsOwned(item)).Max(item => item.MassGrams) ?? 0;
        return bought.Sum(item => item.MassGrams ?? heaviestKnown);
    }

    private static int ParfocalGroups(IReadOnlyList<OracleItem> kit)
    {
        List<OracleItem> eyepieces = [.. kit.Where(item => item.Kind != OracleKind.Barlow)];
        int ungrouped = eyepieces.Count(item => item.ParfocalGroup is null);
        return ungrouped + eyepieces.Select(item => item.ParfocalGroup).OfType<string>().Distinct().Count();
    }
}
