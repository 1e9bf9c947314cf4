namespace Evenstep.Planning.Tests.Oracle;

/// <summary>What the request prefers besides quality, as a number of which less is better; 0 where there is nothing.</summary>
internal static class OraclePreference
{
    public static double Value(OracleBench bench, IReadOnlyList<OracleItem> bought) => bench.Problem.Preferences.Prefer switch
    {
        OraclePrefer.LightWeight => Mass(bench, bought),
        OraclePrefer.Parfocal => ParfocalGroups([.. bench.Owned, .. bought]),
        _ => 0,
    };

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
