using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Targets;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Kits;

/// <summary>Writes what every answer says of a kit.</summary>
internal static class KitWriter
{
    public static FiguresAnswer FiguresOf(LadderFigures figures) => new()
    {
        LargestStep = LargestStepOf(figures),
        MeanMismatchPercent = figures.HasViews ? Rounded.MeanPercent(figures.MeanMismatch) : null,
        MeanExcessPercent = figures.HasViews ? Rounded.MeanPercent(figures.MeanExcess) : null,
        ServedPercent = Rounded.Percent(100 * figures.ServedShare),
        ComfortablePercent = Rounded.Percent(100 * figures.ComfortableShare),
    };

    public static double? LargestStepOf(LadderFigures figures) => figures.HasViews ? Rounded.Ratio(figures.LargestStep.Ratio) : null;

    public static LadderAnswer LadderOf(Ladder ladder, Step enough, ImmutableArray<AskedTarget>? targets)
    {
        var figures = FiguresOf(ladder.Figures);
        return new LadderAnswer
        {
            LargestStep = figures.LargestStep,
            MeanMismatchPercent = figures.MeanMismatchPercent,
            MeanExcessPercent = figures.MeanExcessPercent,
            ServedPercent = figures.ServedPercent,
            ComfortablePercent = figures.ComfortablePercent,
            Views = new Written<KitView, ViewAnswer>(ladder.Views, ViewOf),
            Steps = [.. ladder.Jumps().Select(jump => StepOf(jump, enough))],
            Overlaps = [.. ladder.Overlaps().Take(Ladder.MostOverlapsTold).Select(OverlapOf)],
            Targets = TargetWriter.Write(targets, ladder),
        };
    }

    public static PowerRangeAnswer RangeOf(TelescopeInUse telescope) => new()
    {
        Lowest = Rounded.Power(telescope.Range.Lowest),
        LowestSetBy = telescope.Range.LowestSetBy,
        Highest = Rounded.Power(telescope.Range.Highest),
        HighestSetBy = telescope.Range.HighestSetBy,
    };

    public static ResolutionAnswer ResolutionOf(TelescopeInUse telescope) => new()
    {
        RayleighArcsec = Rounded.Arcsec(telescope.Telescope.RayleighArcsec),
        DawesArcsec = Rounded.Arcsec(telescope.Telescope.DawesArcsec),
    };

    public static IReadOnlyList<FramingAnswer> FramingsOf(Kit kit) => [.. kit.Problem.Demands.MustFrame.Select(framing => new FramingAnswer
    {
        Name = framing.Name,
        WidthDeg = framing.WidthDeg,
        Telescope = framing.TelescopeIndex is { } index ? kit.Problem.Telescopes[index].Telescope.Name : null,
        Met = FramingRule.Frames(kit, framing.WidthDeg, framing.TelescopeIndex),
        TrueFieldDeg = kit.WidestFieldDeg(framing.TelescopeIndex) is { } widest ? Rounded.FieldDeg(widest) : null,
    })];

    public static IReadOnlyList<string> SpareOf(Kit kit, WorkBudget? budget) => SpareOf(kit, Spare.ShowingTelescopes(kit), budget);

    /// <summary>The same, where only some telescopes count.</summary>
    public static IReadOnlyList<string> SpareOf(Kit kit, ImmutableArray<int> telescopes, WorkBudget? budget) =>
        [.. Spare.Of(kit, telescopes, budget).Select(item => item.Id)];

    /// <summary>The owned items that could all be given away at once; null if the work limit came first.</summary>
    /// <param name="kit">What there is.</param>
    /// <param name="telescopes">The telescopes that count, by their indices.</param>
    /// <param name="budget">What it may take; null for what is usual.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static IReadOnlyList<string>? SpareTogetherOf(Kit kit, ImmutableArray<int> telescopes, WorkBudget? budget) =>
        Spare.Together(kit, telescopes, budget ?? new WorkBudget(WorkLimits.Usual)) is { } spare ? [.. spare.Select(item => item.Id)] : null;

    public static CatalogueAnswer CatalogueOf(Catalogue catalogue) => new() { Id = catalogue.Id, Version = catalogue.Version };

    public static ViewAnswer ViewOf(KitView one) => new()
    {
        EyepieceId = one.Eyepiece.Id,
        BarlowId = one.Barlow?.Id,
        Factor = one.View.Factor,
        TrueFieldDeg = Rounded.FieldDeg(one.View.TrueFieldDeg),
        TrueFieldFrom = one.View.TrueFieldFrom,
        ExitPupilMm = Rounded.Millimetres(one.View.ExitPupilMm),
        Power = Rounded.Power(one.View.Power),
        PowerAtShortest = one.View.IsZoom ? Rounded.Power(one.View.PowerAtShortest) : null,
        ApparentFieldDeg = Rounded.FieldDeg(one.View.Ocular.ApparentFieldAtLongestDeg),
        EyeReliefMm = Rounded.Millimetres(one.View.Ocular.EyeReliefMm),
        DriftSeconds = Rounded.DriftSeconds(one.View.DriftSeconds),
        Usable = one.IsUsable,
        NotUsableBecause = one.NotUsableBecause,
        Drawbacks = DrawbackWriter.Write(one.Drawbacks),
    };

    public static StepAnswer StepOf(Jump jump, Step enough) => new()
    {
        From = Rounded.Power(jump.FromPower),
        To = Rounded.Power(jump.ToPower),
        Ratio = Rounded.Ratio(jump.Ratio),
        Weighed = Rounded.Ratio(jump.Weighed.Ratio),
        Enough = jump.IsEnough(enough),
    };

    public static OverlapAnswer OverlapOf(OverlappingPair pair) => new()
    {
        First = NameOf(pair.First),
        Second = NameOf(pair.Second),
        Ratio = pair.Ratio is { } ratio ? Rounded.Ratio(ratio) : null,
    };

    private static ViewNameAnswer NameOf(KitView one) => new()
    {
        EyepieceId = one.Eyepiece.Id,
        BarlowId = one.Barlow?.Id,
        Factor = one.View.Factor,
    };
}
