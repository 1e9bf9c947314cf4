namespace Evenstep.Planning.Tests.Oracle;

/// <summary>The telescopes and the owned kit of a problem, and which views any kit gives there.</summary>
internal sealed class OracleBench
{
    private const double DefaultEnoughStep = 1.5;

    private readonly HashSet<string> ownedIds;

    public OracleBench(OracleProblem problem)
    {
        problem = OracleAssumed.Settled(problem);
        Problem = problem;
        Scales = [.. problem.Telescopes.Select(telescope => new OracleScale(telescope, problem))];
        Owned = [.. problem.Owned.Select(owned => owned.Item ?? problem.Catalogue.Single(item => item.Id == owned.Id))];
        ownedIds = [.. Owned.Select(item => item.Id)];
    }

    public OracleProblem Problem { get; }

    public IReadOnlyList<OracleScale> Scales { get; }

    public IReadOnlyList<OracleItem> Owned { get; }

    public double EnoughStep => Problem.Preferences.EnoughStep ?? DefaultEnoughStep;

    public bool IsOwned(OracleItem item) => ownedIds.Contains(item.Id);

    public static bool Fits(OracleItem item, OracleBarrel carrier) =>
        item.Barrel == carrier || (item.Barrel == OracleBarrel.Inch125 && carrier == OracleBarrel.Inch2);

    public bool FitsSomeTelescope(OracleItem item) =>
        Scales.Any(scale => Fits(item, scale.Telescope.FocuserBarrel));

    /// <summary>Every view of a kit that the barrels allow, usable or not.</summary>
    public IEnumerable<OracleView> Views(IReadOnlyList<OracleItem> kit) =>
        from eyepiece in kit
        where eyepiece.Kind != OracleKind.Barlow && !eyepiece.IsReticle
        from view in Combinations(eyepiece, kit)
        select view;

    public IEnumerable<OracleView> UsableViews(IReadOnlyList<OracleItem> kit) =>
        Views(kit).Where(view => view.NotUsableBecause is null);

    /// <summary>The figures of a kit by its usable views in each telescope.</summary>
    public OracleKitFigures Figures(IReadOnlyList<List<OracleView>> viewsByTelescope, IReadOnlyList<int> counting)
    {
        OracleFigures[] telescopes =
            [.. viewsByTelescope.Select((views, telescope) => OracleLadder.Figures(views, Scales[telescope].Length, EnoughStep))];
        return new OracleKitFigures(
            OracleLadder.Combine(telescopes),
            telescopes,
            OracleLadder.Combine([.. counting.Select(telescope => telescopes[telescope])]));
    }

    /// <summary>Whether a kit has a reticle eyepiece that gives the power asked in some telescope.</summary>
    public bool HasServingReticle(IReadOnlyList<OracleItem> kit, double leastPower) =>
        kit.Any(item => item.IsReticle && ReachesPower(item, kit, leastPower));

    public bool ReachesPower(OracleItem eyepiece, IReadOnlyList<OracleItem> barlows, double leastPower) =>
        Combinations(eyepiece, barlows).Any(view => OracleTolerance.RatioAtLeast(view.LowestPower, leastPower));

    private IEnumerable<OracleView> Combinations(OracleItem eyepiece, IReadOnlyList<OracleItem> kit)
    {
        foreach (OracleScale scale in Scales)
        {
            OracleBarrel focuser = scale.Telescope.FocuserBarrel;
            if (Fits(eyepiece, focuser))
            {
                yield return new OracleView(scale, eyepiece, null, 1, IsOwned(eyepiece));
            }

            foreach (OracleItem barlow in kit.Where(item => item.Kind == OracleKind.Barlow))
            {
                if (!Fits(eyepiece, barlow.Barrel) || !Fits(barlow, focuser))
                {
                    continue;
                }

                foreach (double factor in barlow.Factors)
                {
                    yield return new OracleView(scale, eyepiece, barlow, factor, IsOwned(eyepiece));
                }
            }
        }
    }
}
