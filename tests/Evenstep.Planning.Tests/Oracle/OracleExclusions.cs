namespace Evenstep.Planning.Tests.Oracle;

/// <summary>Which catalogue items are no candidates, and the first reason why.</summary>
internal static class OracleExclusions
{
    public const string ByRequest = "excluded-by-request";
    public const string OutOfStock = "out-of-stock";
    public const string Reticle = "reticle";
    public const string OverBudget = "over-budget";
    public const string TooHeavy = "too-heavy";
    public const string BarrelTooWide = "barrel-too-wide";
    public const string OutsidePowerRange = "outside-power-range";
    public const string EyeReliefTooShort = "eye-relief-too-short";
    public const string ApparentFieldTooNarrow = "apparent-field-too-narrow";
    public const string OverlapsOwned = "overlaps-owned";

    public static Dictionary<string, string> Of(OracleBench bench)
    {
        Dictionary<string, string> exclusions = new(StringComparer.Ordinal);
        foreach (OracleItem item in bench.Problem.Catalogue)
        {
            if (Code(bench, item) is { } code)
            {
                exclusions.Add(item.Id, code);
            }
        }

        return exclusions;
    }

    private static string? Code(OracleBench bench, OracleItem item)
    {
        OracleProblem problem = bench.Problem;
        if (IsExcludedByRequest(problem.Preferences, item))
        {
            return ByRequest;
        }

        if (!item.InStock)
        {
            return OutOfStock;
        }

        if (item.IsReticle && IsReticleUnwanted(bench))
        {
            return Reticle;
        }

        if (item.Price > problem.Limits.Budget || item.Price > problem.Limits.MaxPricePerItem)
        {
            return OverBudget;
        }

        if (item.MassGrams is { } mass && problem.Limits.MaxItemMassGrams is { } most && OracleTolerance.Above(mass, most))
        {
            return TooHeavy;
        }

        if (!bench.FitsSomeTelescope(item))
        {
            return BarrelTooWide;
        }

        return ViewCode(bench, item) ?? (OverlapsOwnedKit(bench, item) ? OverlapsOwned : null);
    }

    private static bool IsExcludedByRequest(OraclePreferences preferences, OracleItem item)
    {
        if (preferences.Exclude.Contains(item.Id))
        {
            return true;
        }

        OracleUse use = item.Kind switch
        {
            OracleKind.Barlow => preferences.Barlows ?? OracleUse.Allow,
            OracleKind.Zoom => preferences.Zooms ?? OracleUse.Avoid,
            _ => OracleUse.Allow,
        };
        return use == OracleUse.Avoid && !preferences.MustInclude.Contains(item.Id);
    }

    private static bool IsReticleUnwanted(OracleBench bench) =>
        bench.Problem.Preferences.ReticleLeastPower is not { } leastPower
        || bench.HasServingReticle(bench.Owned, leastPower);

    private static string? ViewCode(OracleBench bench, OracleItem item)
    {
        if (item.Kind == OracleKind.Barlow)
        {
            return null;
        }

        if (item.IsReticle)
        {
            IReadOnlyList<OracleItem> everything = [.. bench.Owned, .. bench.Problem.Catalogue];
            return bench.ReachesPower(item, everything, bench.Problem.Preferences.ReticleLeastPower!.Value)
                ? null
                : OutsidePowerRange;
        }

        List<string?> reasons = [.. bench.Views([item]).Select(view => view.NotUsableBecause)];
        if (reasons.TrueForAll(reason => reason is OracleView.BelowRange or OracleView.AboveRange))
        {
            return OutsidePowerRange;
        }

        if (reasons.TrueForAll(reason => reason is not (null or OracleView.ApparentField)))
        {
            return EyeReliefTooShort;
        }

        return reasons.Contains(null) ? null : ApparentFieldTooNarrow;
    }

    private static bool OverlapsOwnedKit(OracleBench bench, OracleItem item)
    {
        if (bench.IsOwned(item))
        {
            return true;
        }

        List<OracleView> views = [.. bench.UsableViews([.. bench.Owned, item])];
        int overlaps = 0;
        for (int i = 0; i < views.Count; i++)
        {
            for (int j = i + 1; j < views.Count; j++)
            {
                if ((Needs(views[i], item) || Needs(views[j], item))
                    && OracleOverlap.Overlap(views[i], views[j]))
                {
                    overlaps++;
                }
            }
        }

        return overlaps > (bench.Problem.Limits.AllowedOverlaps ?? 0);
    }

    private static bool Needs(OracleView view, OracleItem item) => view.Eyepiece == item || view.Barlow == item;
}
