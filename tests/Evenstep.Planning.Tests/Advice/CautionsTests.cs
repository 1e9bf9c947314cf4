using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Advice;

/// <summary>The thresholds are common practice, no source.</summary>
public sealed class CautionsTests
{
    private static readonly TelescopeInUse From50To200 = Some.InUse(lowest: 50, highest: 200);

    [Fact]
    public void The_sun_comes_first_even_where_there_is_nothing_to_look_through() => Assert.Equal([Cautions.Sun], CodesOf(Owning()));

    [Theory]
    [InlineData(true, null)]
    [InlineData(false, 0.5)]
    public void Eyesight_is_mentioned_where_spectacles_are(bool wearsSpectacles, double? astigmatism)
    {
        var observer = new Observer { WearsSpectacles = wearsSpectacles, AstigmatismDioptres = astigmatism };

        Assert.Equal([Cautions.Sun, Cautions.Eyesight], CodesOf(Owning() with { Observer = observer }));
    }

    [Theory]
    [InlineData(7, false)]
    [InlineData(6.98, false)]
    [InlineData(6.9, true)]
    public void An_exit_pupil_under_0_7_mm_is_narrow(double focalLengthMm, bool isNarrow) =>
        Assert.Equal(isNarrow, CodesOf(Owning(Some.Eyepiece(focalLengthMm))).Contains(Cautions.ExitPupilNarrow));

    /// <summary>Planets bear 0.5 mm.</summary>
    [Theory]
    [InlineData(5.0, false)]
    [InlineData(4.9, true)]
    public void Whoever_observes_planets_bears_a_narrower_one(double focalLengthMm, bool isNarrow)
    {
        var problem = Owning(Some.Eyepiece(focalLengthMm)) with { Observer = new Observer { Observes = [Interest.Planets] } };

        Assert.Equal(isNarrow, CodesOf(problem).Contains(Cautions.ExitPupilNarrow));
    }

    [Theory]
    [InlineData(5.0, null, null)]
    [InlineData(null, 75.0, Cautions.OfAge)]
    [InlineData(null, null, Cautions.Usual)]
    public void Whose_pupil_it_is_is_told(double? pupilMm, double? age, string? variant)
    {
        var fast = Some.InUse(Some.Telescope(200, 1000, name: "fast"), lowest: 25, highest: 200);
        var slow = Some.InUse(Some.Telescope(200, 2000, name: "slow"), lowest: 25, highest: 200);
        var problem = Some.Problem(owned: [Some.Eyepiece(32)]) with { Telescopes = [slow, fast], Observer = new Observer { PupilMm = pupilMm, Age = age } };

        var caution = Cautions.Of(Kit.Of(problem, [])).Single(one => one.Code == Cautions.ExitPupilWide);

        Assert.Equal(("fast", variant), (ValueOf(caution, "telescope"), caution.Variant));
    }

    [Theory]
    [InlineData(6, false)]
    [InlineData(5.72, false)]
    [InlineData(5.7, true)]
    public void An_exit_pupil_of_more_than_1_05_times_the_eyes_pupil_is_wide(double pupilMm, bool isWide)
    {
        // An exit pupil of 6 mm: 30 mm at f/5.
        var telescope = Some.InUse(Some.Telescope(200, 1000), lowest: 30, highest: 200);
        var problem = Some.Problem(telescope, owned: [Some.Eyepiece(30)]) with { Observer = new Observer { PupilMm = pupilMm } };

        Assert.Equal(isWide, CodesOf(problem).Contains(Cautions.ExitPupilWide));
    }

    [Theory]
    [InlineData(Barrel.Inch0965, 150, false)]
    [InlineData(Barrel.Inch0965, 151, true)]
    [InlineData(Barrel.Inch125, 400, false)]
    [InlineData(Barrel.Inch125, 400.04, false)]
    [InlineData(Barrel.Inch125, 401, true)]
    [InlineData(Barrel.Inch2, 1000, false)]
    [InlineData(Barrel.Inch2, 1001, true)]
    public void Weight_is_judged_by_the_focuser(Barrel focuser, double grams, bool isHeavy)
    {
        var telescope = Some.InUse(Some.Telescope(focuser: focuser), lowest: 50, highest: 200);

        Assert.Equal(
            isHeavy, CodesOf(Some.Problem(telescope, owned: [Weighing(Some.Eyepiece(10, barrel: focuser), grams)])).Contains(Cautions.HeavyForFocuser));
    }

    [Fact]
    public void A_barlow_weighs_too_and_the_heaviest_view_is_named()
    {
        var problem = Owning(Weighing(Some.Eyepiece(20, id: "a"), 300), Weighing(Some.Eyepiece(10, id: "b"), 250), Weighing(Some.Barlow(2, id: "c"), 120));

        var caution = Cautions.Of(Kit.Of(problem, [])).Single(one => one.Code == Cautions.HeavyForFocuser);

        Assert.Equal(420.0, ValueOf(caution, "massGrams"));
        Assert.Equal(["a", "c"], (string[])ValueOf(caution, "itemIds"));
    }

    [Theory]
    [InlineData(true, 16.9, "15")]
    [InlineData(true, 17, null)]
    [InlineData(false, 6.9, "5")]
    [InlineData(false, 7, null)]
    public void Eye_relief_is_tight_within_2_mm_of_what_is_needed(bool wearsSpectacles, double eyeReliefMm, string? needed)
    {
        var problem = Owning() with { Observer = new Observer { WearsSpectacles = wearsSpectacles } };

        var cautions = Cautions.Of(Kit.Of(problem, [Some.Eyepiece(10, eyeReliefMm: eyeReliefMm)])).Where(one => one.Code == Cautions.EyeReliefTight).ToList();

        Assert.Equal(needed is null ? [] : [needed], cautions.Select(one => FormattableString.Invariant($"{ValueOf(one, "neededMm")}")));
    }

    [Fact]
    public void Whoever_owns_an_eyepiece_and_wears_no_spectacles_needs_no_eye_relief() =>
        Assert.DoesNotContain(Cautions.EyeReliefTight, CodesOf(Owning(Some.Eyepiece(10, eyeReliefMm: 1))));

    [Theory]
    [InlineData(45, false)]
    [InlineData(44.9996, false)]
    [InlineData(44.9, true)]
    public void A_zoom_is_narrow_below_45_degrees(double fieldDeg, bool isNarrow) =>
        Assert.Equal(isNarrow, CodesOf(Owning(Some.Zoom(8, 24, fieldAtLongestDeg: fieldDeg))).Contains(Cautions.ZoomFieldNarrow));

    [Fact]
    public void Eyepieces_made_for_slower_telescopes_are_named_unless_only_a_barlow_makes_them_usable()
    {
        var telescope = Some.InUse(Some.Telescope(200, 1000), lowest: 50, highest: 300);
        Item[] owned =
        [
            For(Some.Eyepiece(10, id: "slow"), 6), For(Some.Eyepiece(12, id: "fast"), 5), For(Some.Eyepiece(30, id: "too-low-alone"), 8), Some.Eyepiece(15),
            Some.Barlow(2)
        ];

        var note = KitNotes.Of(Kit.Of(Some.Problem(telescope, owned: [.. owned]), [])).Single(one => one.Code == KitNotes.FastTelescope);

        Assert.Equal(5.0, ValueOf(note, "focalRatio"));
        Assert.Equal(["slow"], (string[])ValueOf(note, "itemIds"));
        Assert.Equal([6.0], (double[])ValueOf(note, "fastestFocalRatios"));
    }

    [Fact]
    public void What_is_owned_and_what_is_bought_are_told_apart_and_zooms_and_Barlows_count()
    {
        var telescope = Some.InUse(Some.Telescope(200, 1000), lowest: 50, highest: 300);
        var zoom = new Item("zoom", (Zoom)Some.Zoom(8, 24).Optic with { FastestFocalRatio = 6 });
        var barlow = new Item("barlow", (Barlow)Some.Barlow(2).Optic with { FastestFocalRatio = 7 });
        var problem = Some.Problem(telescope, owned: [For(Some.Eyepiece(10, id: "own"), 6)]);

        var notes = KitNotes.Of(Kit.Of(problem, [zoom, barlow])).Where(one => one.Code == KitNotes.FastTelescope).ToList();

        Assert.Equal([null, KitNotes.Bought], notes.Select(note => note.Variant));
        Assert.Equal([["own"], ["barlow", "zoom"]], notes.Select(note => ((string[])ValueOf(note, "itemIds")).Order(StringComparer.Ordinal).ToArray()));
    }

    [Fact]
    public void Figures_that_were_assumed_are_named()
    {
        Item[] items =
            [new("a", Eyepiece.Of(10, null, 12, null, Barrel.Inch125)), new("b", Eyepiece.Of(20, 60, null, null, Barrel.Inch125)), Some.Eyepiece(15)];

        var notes = KitNotes.Of(Kit.Of(Owning(items[0]), items[1..])).Where(one => one.Code == KitNotes.AssumedFigures).ToList();

        Assert.Equal([null, KitNotes.EyeRelief], notes.Select(note => note.Variant));
        Assert.Equal([["a"], ["b"]], notes.Select(note => (string[])ValueOf(note, "itemIds")));
        Assert.Equal([[50.0], [14.0]], notes.Select(note => (double[])ValueOf(note, "figures")));
    }

    [Theory]
    [InlineData(5, 4.96, false)]
    [InlineData(5, 4.9, true)]
    public void A_light_cone_is_too_steep_by_what_focal_ratios_are_told_apart_by(double fastest, double focalRatio, bool isTooSteep)
    {
        var telescope = Some.InUse(Some.Telescope(200, 200 * focalRatio), lowest: 50, highest: 300);

        var notes = KitNotes.Of(Kit.Of(Some.Problem(telescope, owned: [For(Some.Eyepiece(10), fastest)]), []));

        Assert.Equal(isTooSteep, notes.Any(note => note.Code == KitNotes.FastTelescope));
    }

    [Fact]
    public void Of_purchases_only_their_own_views_and_cones_are_told()
    {
        var telescope = Some.InUse(Some.Telescope(200, 1000), lowest: 25, highest: 300);
        var problem = Some.Problem(telescope, owned: [For(Some.Eyepiece(40, id: "own"), 6)]);
        var (plain, slow) = (Kit.Of(problem, [Some.Eyepiece(15)]), Kit.Of(problem, [For(Some.Eyepiece(15, id: "slow"), 7)]));

        Assert.Contains(Cautions.ExitPupilWide, Cautions.Of(plain).Select(one => one.Code));
        Assert.DoesNotContain(Cautions.ExitPupilWide, Cautions.OfPurchases(plain).Select(one => one.Code));
        Assert.Empty(KitNotes.OfPurchases(plain));
        Assert.Equal(["slow"], (string[])ValueOf(Assert.Single(KitNotes.OfPurchases(slow)), "itemIds"));
    }

    [Fact]
    public void The_tightest_eye_relief_is_named_first()
    {
        Item[] bought = [Some.Eyepiece(10, eyeReliefMm: 6, id: "c"), Some.Eyepiece(12, eyeReliefMm: 5.5, id: "d"), Some.Eyepiece(15, eyeReliefMm: 6, id: "a")];

        var caution = Cautions.Of(Kit.Of(Owning(), [.. bought])).Single(one => one.Code == Cautions.EyeReliefTight);

        Assert.Equal(["d", "a", "c"], (string[])ValueOf(caution, "itemIds"));
    }

    [Theory]
    [InlineData(3.53, true)]
    [InlineData(3.51, false)]
    public void A_focuser_is_mentioned_only_where_it_keeps_the_eye_from_noticeably_lower_powers(double pupilMm, bool isMentioned)
    {
        // At f/10 the longest practical eyepiece shows an exit pupil of 3.2 mm; 1.1 times as much is 3.52 mm.
        var observer = new Observer { PupilMm = pupilMm };

        var notes = KitNotes.Of(Kit.Of(Some.Problem(observer: observer), []));

        Assert.Equal(isMentioned, notes.Any(note => note.Code == KitNotes.RangeSetByBarrel));
    }

    [Fact]
    public void A_focuser_that_keeps_the_eye_from_its_lowest_power_is_mentioned()
    {
        // 6 mm of pupil would use 16.7x; 32 mm is the longest practical eyepiece.
        var note = KitNotes.Of(Kit.Of(Some.Problem(), [])).Single(one => one.Code == KitNotes.RangeSetByBarrel);

        Assert.Equal((31.25, 100 / 6.0), (ValueOf(note, "lowest"), ValueOf(note, "lowestForEye")));
    }

    private static PurchaseProblem Owning(params ImmutableArray<Item> items) => Some.Problem(From50To200, owned: items);

    private static IEnumerable<string> CodesOf(PurchaseProblem problem) => Cautions.Of(Kit.Of(problem, [])).Select(caution => caution.Code);

    private static object ValueOf(Remark remark, string name) => remark.Values.Single(value => value.Name == name).Value!;

    private static Item Weighing(Item item, double grams) => new(item.Id, item.Optic) { MassGrams = grams };

    private static Item For(Item eyepiece, double focalRatio) => new(eyepiece.Id, (Eyepiece)eyepiece.Optic with { FastestFocalRatio = focalRatio });
}
