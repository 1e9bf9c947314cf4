using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Search;

public class LikenessTests
{
    private const int Problems = 200;

    private static readonly Observer WithSpectacles = new() { WearsSpectacles = true, AstigmatismDioptres = 1 };

    private static readonly Eyepiece Plain = new(20, 50, 16, Barrel.Inch125);

    /// <summary>Also the other way round: items that look or serve differently in any way are not alike.</summary>
    [Fact]
    public void Alike_items_look_the_same_alone_and_with_everything_and_serve_alike()
    {
        var pairs = 0;
        foreach (var problem in Drawn.Problems(Problems).Select(drawn => drawn.Problem))
        {
            foreach (var alike in problem.Catalogue.GroupBy(item => Likeness.Of(problem, item)).Where(group => group.Count() > 1))
            {
                Assert.Single(alike.Select(item => Appearance(problem, item)).Distinct());
                pairs += alike.Count() - 1;
            }
        }

        Assert.True(pairs > Problems, $"only {pairs} pairs are alike");
    }

    [Fact]
    public void Alike_items_in_the_same_kit_break_the_same_rules_but_for_price()
    {
        foreach (var problem in Drawn.Problems(Problems).Select(drawn => drawn.Problem with { Limits = drawn.Problem.Limits with { Budget = 1_000_000 } }))
        {
            foreach (var alike in problem.Catalogue.Except(problem.Owned).GroupBy(item => Likeness.Of(problem, item)).Where(group => group.Count() > 1))
            {
                Item[] others = [.. problem.Catalogue.Except(problem.Owned).Except(alike).Take(2)];
                Assert.Single(alike.Select(item => BreachesOf(problem, [.. others, item])).Distinct());
            }
        }
    }

    [Fact]
    public void Price_mass_group_and_name_make_no_difference()
    {
        var problem = Some.Problem();
        var item = new Item("a", Plain) { Price = 10, MassGrams = 100, ParfocalGroup = "one", Name = "A", InStock = true };
        var other = new Item("b", Plain) { Price = 20, MassGrams = 200, ParfocalGroup = "two", Name = "B", InStock = false };
        Assert.Equal(Likeness.Of(problem, item), Likeness.Of(problem, other));
    }

    public static TheoryData<string, bool> Differences => new()
    {
        { "focal length", false },
        { "barrel", false },
        { "apparent field", false },
        { "field stop", false },
        { "reticle", false },
        { "eye relief below what spectacles need", false },
        { "eye relief below what is sold", false },
        { "eye relief above what is comfortable", false },
        { "still more eye relief", true },
        { "narrow field", false },
        { "focal ratio that no telescope is steeper than", true },
        { "focal ratio that a telescope is steeper than", false },
    };

    [Theory]
    [MemberData(nameof(Differences))]
    public void An_eyepiece_differs_by_what_the_eye_can_tell(string what, bool isAlike)
    {
        Optic other = what switch
        {
            "focal length" => new Eyepiece(21, 50, 16, Barrel.Inch125),
            "barrel" => new Eyepiece(20, 50, 16, Barrel.Inch2),
            "apparent field" => new Eyepiece(20, 51, 16, Barrel.Inch125),
            "field stop" => Plain with { FieldStopMm = 17 },
            "reticle" => Plain with { Purpose = EyepiecePurpose.Reticle },
            "eye relief below what spectacles need" => new Eyepiece(20, 50, 14, Barrel.Inch125),
            "eye relief below what is sold" => new Eyepiece(20, 50, 4, Barrel.Inch125),
            "eye relief above what is comfortable" => new Eyepiece(20, 50, 17, Barrel.Inch125),
            "still more eye relief" => new Eyepiece(20, 50, 16.9, Barrel.Inch125),
            "narrow field" => new Eyepiece(20, 49, 16, Barrel.Inch125),
            "focal ratio that no telescope is steeper than" => Plain with { FastestFocalRatio = 5 },
            _ => Plain with { FastestFocalRatio = 11 },
        };
        Assert.Equal(isAlike, AreAlike(Some.Problem(observer: WithSpectacles), Plain, other));
    }

    /// <summary>5 and 15 mm for using it at all, 8 and 15 mm and 2 mm to spare for comfort.</summary>
    [Theory]
    [InlineData(4.9, 5, false)]
    [InlineData(5, 9.9, true)]
    [InlineData(9.9, 10, false)]
    [InlineData(10, 14.9, true)]
    [InlineData(14.9, 15, false)]
    [InlineData(15, 16.9, true)]
    [InlineData(16.9, 17, false)]
    [InlineData(17, 40, true)]
    public void Where_the_spectacles_may_come_off_four_thresholds_of_eye_relief_count(double less, double more, bool isAlike) =>
        Assert.Equal(isAlike, AreAlike(Some.Problem(observer: WithSpectacles), WithEyeRelief(less), WithEyeRelief(more)));

    [Theory]
    [InlineData(4.9, 5, false)]
    [InlineData(5, 9.9, true)]
    [InlineData(9.9, 10, false)]
    [InlineData(10, 40, true)]
    public void A_bare_eye_knows_two_thresholds_of_eye_relief(double less, double more, bool isAlike) =>
        Assert.Equal(isAlike, AreAlike(Some.Problem(), WithEyeRelief(less), WithEyeRelief(more)));

    [Fact]
    public void Where_quality_does_not_count_only_what_is_usable_does()
    {
        var problem = Some.Problem() with { Preferences = new Preferences { Prefer = Prefer.LowPrice } };
        Assert.True(AreAlike(problem, WithEyeRelief(5), WithEyeRelief(40)));
        Assert.False(AreAlike(problem, WithEyeRelief(4.9), WithEyeRelief(5)));
        Assert.True(AreAlike(problem, Plain, Plain with { FastestFocalRatio = 11 }));
    }

    [Theory]
    [InlineData(Prefer.WideField, 65, 75, false)]
    [InlineData(Prefer.WideField, 71, 75, true)]
    [InlineData(Prefer.Comfort, 65, 75, true)]
    public void With_a_field_stop_the_apparent_field_counts_where_wide_fields_are_preferred(Prefer prefer, double one, double other, bool isAlike)
    {
        var problem = Some.Problem() with { Preferences = new Preferences { Prefer = prefer } };
        var eyepiece = new Eyepiece(20, one, 16, Barrel.Inch125) { FieldStopMm = 20 };
        Assert.Equal(isAlike, AreAlike(problem, eyepiece, new Eyepiece(20, other, 16, Barrel.Inch125) { FieldStopMm = 20 }));
    }

    [Theory]
    [InlineData(Prefer.LongEyeRelief, 14, 16, false)]
    [InlineData(Prefer.LongEyeRelief, 15, 16, true)]
    [InlineData(Prefer.Comfort, 14, 16, true)]
    public void Steps_of_eye_relief_count_where_long_eye_relief_is_preferred(Prefer prefer, double one, double other, bool isAlike)
    {
        var problem = Some.Problem() with { Preferences = new Preferences { Prefer = prefer } };
        Assert.Equal(isAlike, AreAlike(problem, WithEyeRelief(one), WithEyeRelief(other)));
    }

    [Theory]
    [InlineData(55, true)]
    [InlineData(65, false)]
    public void With_a_field_stop_the_apparent_field_counts_only_against_the_least_asked(double leastAsked, bool isAlike)
    {
        var problem = Some.Problem() with { Preferences = new Preferences { LeastApparentFieldDeg = leastAsked } };
        var (narrow, wide) = (new Eyepiece(20, 60, 16, Barrel.Inch125) { FieldStopMm = 20 }, new Eyepiece(20, 68, 16, Barrel.Inch125) { FieldStopMm = 20 });
        Assert.Equal(isAlike, AreAlike(problem, narrow, wide));
    }

    [Theory]
    [InlineData(8, 24, 60, 40, true)]
    [InlineData(7, 24, 60, 40, false)]
    [InlineData(8, 25, 60, 40, false)]
    [InlineData(8, 24, 61, 40, false)]
    [InlineData(8, 24, 60, 41, false)]
    public void A_zoom_differs_by_either_end(double shortest, double longest, double fieldAtShortest, double fieldAtLongest, bool isAlike) => Assert.Equal(
        isAlike,
        AreAlike(
            Some.Problem(),
            new Zoom(8, 24, 60, 40, 16, Barrel.Inch125),
            new Zoom(shortest, longest, fieldAtShortest, fieldAtLongest, 16, Barrel.Inch125)));

    [Fact]
    public void A_Barlow_differs_by_its_factors_and_its_barrel()
    {
        var problem = Some.Problem();
        Assert.True(AreAlike(problem, new Barlow([2, 3], Barrel.Inch125), new Barlow([3, 2], Barrel.Inch125)));
        Assert.False(AreAlike(problem, new Barlow([2], Barrel.Inch125), new Barlow([2, 3], Barrel.Inch125)));
        Assert.False(AreAlike(problem, new Barlow([2], Barrel.Inch125), new Barlow([2], Barrel.Inch2)));
    }

    [Fact]
    public void Of_a_reticle_eyepiece_only_the_power_it_gives_counts()
    {
        var problem = Some.Problem();
        var reticle = new Eyepiece(12, 50, 16, Barrel.Inch125) { Purpose = EyepiecePurpose.Reticle };
        Assert.True(AreAlike(problem, reticle, new Eyepiece(12, 40, 5, Barrel.Inch125) { Purpose = EyepiecePurpose.Reticle }));
        Assert.False(AreAlike(problem, reticle, new Eyepiece(9, 50, 16, Barrel.Inch125) { Purpose = EyepiecePurpose.Reticle }));
    }

    private static bool AreAlike(PurchaseProblem problem, Optic a, Optic b) =>
        Likeness.Of(problem, new Item("a", a)) == Likeness.Of(problem, new Item("b", b));

    private static Eyepiece WithEyeRelief(double mm) => new(20, 50, mm, Barrel.Inch125);

    private static string BreachesOf(PurchaseProblem problem, ImmutableArray<Item> bought) =>
        string.Join('\n', Breaches.Of(Kit.Of(problem, bought)).Where(breach => breach is not Breach.MustInclude));

    /// <summary>All that is to be seen with an item, as text: every view that it makes with anything of the problem.</summary>
    private static string Appearance(PurchaseProblem problem, Item item)
    {
        Item[] others = [.. problem.Owned.Concat(problem.Catalogue).Distinct()];
        Item[] barlows = [.. others.Where(other => other.IsBarlow)];
        var views = problem.Telescopes.SelectMany(telescope => item.IsBarlow
            ? others.Where(other => other.Ocular is not null).SelectMany(ocular => KitViews.Through(problem, telescope, ocular, true, item, true))
            : KitViews.Alone(problem, telescope, item, true).Concat(
                barlows.SelectMany(barlow => KitViews.Through(problem, telescope, item, true, barlow, true))));
        var reticlePower = item.IsReticle ? Reticle.HighestPower(item, barlows, problem.Telescopes) : null;
        return string.Join('\n', views.Select(view => Appearance(problem, view)).Append($"{reticlePower:R}"));
    }

    private static string Appearance(PurchaseProblem problem, KitView view) =>
        $"{view.Reach} {view.View.LnCutPower:R} {view.View.TrueFieldDeg:R} {view.View.ExitPupilMm:R} {view.View.IsZoom} {view.NotUsableBecause} "
        + QualityOf(problem, view);

    /// <summary>Of a view of no use it does not matter, nor where the price alone decides.</summary>
    private static string QualityOf(PurchaseProblem problem, KitView view) =>
        view.NotUsableBecause is null && problem.Preferences.Prefer != Prefer.LowPrice ? $"{view.Showing.Quality}" : "";
}
