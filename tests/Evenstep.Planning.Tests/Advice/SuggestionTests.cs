using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Advice;

public sealed class SuggestionTests
{
    private const int FirstSeed = 540_000;
    private const int Problems = 150;
    private const int PlacesTried = 400;
    private const double Little = 1e-6;

    /// <summary>1.2 times the width, by common practice.</summary>
    private const double FieldOverWidth = 1.2;

    /// <summary>How far beyond the range a power is still admitted, by common practice.</summary>
    private const double GraceBelow = 1.25;
    private const double GraceAbove = 1.1;

    private static readonly TelescopeInUse From50To200 = Some.InUse(lowest: 50, highest: 200);

    [Fact]
    public void No_other_way_of_looking_suits_a_target_better()
    {
        var (fitting, zooming) = (0, 0);
        foreach (var planned in Planned.Solvable(FirstSeed, Problems))
        {
            var search = new OracleSearch(planned.Asked);
            List<OracleItem> kit = [.. search.Bench.Owned, .. search.Items(search.SetOf(planned.Ids))];
            foreach (var (ladder, scale) in planned.Kit.Ladders.Zip(search.Bench.Scales))
            {
                List<Look> looks = [.. search.Bench.UsableViews(kit).Where(view => view.Scale.Telescope == scale.Telescope).SelectMany(LooksThrough)];
                foreach (var target in TargetsFor(planned.Seed))
                {
                    var suggested = Suggestion.For(target, ladder);
                    AssertBest(suggested, looks, $"seed {planned.Seed}, {target}");
                    fitting += suggested.Fits ? 1 : 0;
                    zooming += suggested.View?.View.IsZoom is true ? 1 : 0;
                }
            }
        }

        Assert.True(fitting > Problems && zooming > Problems, $"{fitting} fit, {zooming} through zooms");
    }

    [Fact]
    public void The_exit_pupil_nearest_to_the_wanted_one_is_suggested()
    {
        // 10 mm gives an exit pupil of 1 mm in this telescope, 20 mm one of 2 mm; 1.4 mm lies nearer to 1 by difference and by ratio.
        var ladder = LadderOf(Some.Eyepiece(10), Some.Eyepiece(20));

        Assert.Equal("eyepiece-10", Suggestion.For(new Target("small", 5, 1.4), ladder).View!.Eyepiece.Id);
        Assert.Equal("eyepiece-20", Suggestion.For(new Target("small", 5, 1.5), ladder).View!.Eyepiece.Id);
        Assert.Equal("eyepiece-20", Suggestion.For(new Target("wide", 26, 1), ladder).View!.Eyepiece.Id);
    }

    [Fact]
    public void Of_equal_exit_pupils_the_wider_field_is_suggested()
    {
        var ladder = LadderOf(Some.Eyepiece(10, id: "a"), Some.Eyepiece(10, apparentFieldDeg: 80, id: "b"));

        Assert.Equal("b", Suggestion.For(new Target("small", 5, 1), ladder).View!.Eyepiece.Id);
    }

    [Fact]
    public void A_target_that_fills_the_field_but_for_a_sixth_fits()
    {
        // 50 degrees at 50x are 60 arcminutes, 1.2 times 50.
        var ladder = LadderOf(Some.Eyepiece(20));

        Assert.True(Suggestion.For(new Target("nebula", 50, 2), ladder).Fits);
        Assert.False(Suggestion.For(new Target("nebula", 50.01, 2), ladder).Fits);
    }

    [Fact]
    public void The_widest_view_is_given_where_none_is_wide_enough()
    {
        var suggested = Suggestion.For(new Target("nebula", 300, 0.5), LadderOf(Some.Eyepiece(10), Some.Eyepiece(20), Some.Eyepiece(6)));

        Assert.Equal(("eyepiece-20", false), (suggested.View!.Eyepiece.Id, suggested.Fits));
    }

    [Fact]
    public void A_zoom_is_turned_to_what_suits_best()
    {
        // From 60 degrees at 8 mm to 40 at 24; 1 mm of exit pupil is at 10 mm.
        var ladder = LadderOf(Some.Zoom(8, 24, 60, 40));

        Assert.Equal(10, Suggestion.For(new Target("planet", 1, 1), ladder).Setting!.Value.FocalLengthMm, Little);
        Assert.Equal(8, Suggestion.For(new Target("planet", 1, 0.1), ladder).Setting!.Value.FocalLengthMm, Little);

        // 48 arcminutes of field: 50 degrees at 62.5x, which is at 16 mm.
        var wide = Suggestion.For(new Target("cluster", 40, 1), ladder);
        Assert.Equal((true, 16, 0.8), (wide.Fits, Math.Round(wide.Setting!.Value.FocalLengthMm, 6), Math.Round(wide.Setting.Value.TrueFieldDeg, 6)));
    }

    [Fact]
    public void A_zoom_whose_field_narrows_fast_is_widest_in_between()
    {
        // f (80 - 2.5 f) is greatest at 16 mm, the field then 40 degrees at 62.5x.
        var suggested = Suggestion.For(new Target("nebula", 300, 5), LadderOf(Some.Zoom(8, 24, 60, 20)));

        Assert.Equal(
            (false, 16, 0.64), (suggested.Fits, Math.Round(suggested.Setting!.Value.FocalLengthMm, 6), Math.Round(suggested.Setting.Value.TrueFieldDeg, 6)));
    }

    [Fact]
    public void Without_a_usable_view_there_is_none() => Assert.Equal((null, null, false), Suggestion.For(new Target("planet", 1, 1), LadderOf()) switch
    {
        var none => (none.View, none.Setting, none.Fits),
    });

    private static Ladder LadderOf(params Item[] owned) => Kit.Of(Some.Problem(From50To200, owned: [.. owned]), []).Ladders[0];

    private static IEnumerable<Target> TargetsFor(int seed)
    {
        var dice = new Dice(new Random(seed));
        return Enumerable.Range(1, 8).Select(i => new Target($"target {i}", Math.Exp(dice.Between(0, 5.5)), dice.Between(0.4, 6)));
    }

    private static void AssertBest(Suggestion suggested, List<Look> looks, string where)
    {
        Assert.Equal(looks.Count == 0, suggested.View is null);
        if (suggested is not { View: { } view, Setting: { } setting })
        {
            return;
        }

        var (target, needed) = (suggested.Target, FieldOverWidth * suggested.Target.WidthArcmin / 60);
        var own =
            looks.First(look => look.View.Eyepiece.Id == view.Eyepiece.Id && look.View.Barlow?.Id == view.Barlow?.Id && look.View.Factor == view.View.Factor);
        var taken = LookAt(own.View, setting.Power);
        var (lowest, highest) = Admitted(own.View);
        Assert.InRange(setting.Power, lowest - Little, highest + Little);
        Assert.Equal(taken.TrueFieldDeg, setting.TrueFieldDeg, Little);
        Assert.Equal(taken.ExitPupilMm, setting.ExitPupilMm, Little);
        Assert.Equal(taken.TrueFieldDeg >= needed - Little, suggested.Fits);
        Assert.All(looks, look => Assert.False(IsBetter(look, taken, target, needed, suggested.Fits), $"{where}: {look} beats {taken}"));
    }

    private static bool IsBetter(Look look, Look taken, Target target, double needed, bool fits)
    {
        if (!fits)
        {
            return look.TrueFieldDeg >= needed + Little || look.TrueFieldDeg > taken.TrueFieldDeg + Little;
        }

        var nearer = DistanceOf(taken, target) - DistanceOf(look, target);
        var isAsNear = Math.Abs(nearer) < OracleTolerance.Epsilon / 2;
        return look.TrueFieldDeg >= needed + Little && (nearer > Little || (isAsNear && look.TrueFieldDeg > taken.TrueFieldDeg + Little));
    }

    private static double DistanceOf(Look look, Target target) => Math.Abs(Math.Log(look.ExitPupilMm / target.WantedExitPupilMm));

    /// <summary>An eyepiece as it is; a zoom at many places from one end of what the range admits to the other.</summary>
    private static IEnumerable<Look> LooksThrough(OracleView view)
    {
        var (lowest, highest) = Admitted(view);
        return Enumerable.Range(0, view.IsZoom ? PlacesTried + 1 : 1)
            .Select(i => LookAt(view, lowest * Math.Pow(highest / lowest, (double)i / PlacesTried)));
    }

    private static (double Lowest, double Highest) Admitted(OracleView view) => view.IsZoom
        ? (Math.Max(view.LowestPower, view.Scale.Lowest / GraceBelow), Math.Min(view.HighestPower, view.Scale.Highest * GraceAbove))
        : (view.LowestPower, view.HighestPower);

    private static Look LookAt(OracleView view, double power)
    {
        var exitPupil = view.Scale.Telescope.ApertureMm / power;
        if (!view.IsZoom)
        {
            return new Look(view, exitPupil, view.TrueFieldDeg);
        }

        var (zoom, focalLength) = (view.Eyepiece, view.Scale.Telescope.FocalLengthMm * view.Factor / power);
        var share = (focalLength - zoom.ShortestFocalLengthMm) / (zoom.LongestFocalLengthMm - zoom.ShortestFocalLengthMm);
        var apparent = zoom.ApparentFieldAtShortestDeg + (share * (zoom.ApparentFieldAtLongestDeg - zoom.ApparentFieldAtShortestDeg));
        return new Look(view, exitPupil, apparent / power);
    }

    private sealed record Look(OracleView View, double ExitPupilMm, double TrueFieldDeg);
}
