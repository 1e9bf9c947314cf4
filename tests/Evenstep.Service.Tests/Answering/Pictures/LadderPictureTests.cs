using System.Xml.Linq;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Pictures;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Tests.Answering.Pictures;

/// <summary>Pictures of random recommendations, read back.</summary>
public sealed class LadderPictureTests
{
    private const int ScenesPerBatch = 60;
    private const int FirstSeed = 520_000;
    private const double HalfAPixel = 0.5;

    /// <summary>The plot of a picture, in its own units.</summary>
    private const double Left = 14;
    private const double Right = 346;

    public static TheoryData<int> Batches => [.. Enumerable.Range(0, 5)];

    [Theory]
    [MemberData(nameof(Batches))]
    public void Every_usable_view_is_drawn_where_its_power_is(int batch) => Assert.All(ScenesOf(batch), scene =>
    {
        var picture = Drawn(scene);

        AssertViews(scene, Enumerable.Range(0, scene.Stages.Length), picture.On("view"));
        AssertViews(scene, [scene.Stages.Length - 1], picture.On("rung"));
    });

    [Theory]
    [MemberData(nameof(Batches))]
    public void No_label_touches_another_or_leaves_the_picture(int batch) => Assert.All(ScenesOf(batch).SelectMany(InEveryLanguage), picture =>
    {
        Box[] boxes = [.. picture.Boxes.OrderBy(box => box.Top)];
        Assert.All(boxes, box => Assert.True(box.Left >= 0 && box.Right <= 360 && box.Top >= 0 && box.Bottom <= picture.Height, $"{box} leaves the picture"));
        foreach (var (i, box) in boxes.Index())
        {
            var near = boxes.Skip(i + 1).TakeWhile(other => other.Top < box.Bottom);
            Assert.DoesNotContain(near, box.Touches);
        }
    });

    [Theory]
    [MemberData(nameof(Batches))]
    public void What_is_served_is_rounded_but_never_up_to_all(int batch) => Assert.All(ScenesOf(batch), scene =>
    {
        foreach (var ladder in scene.Stages.SelectMany(stage => stage.Kit.Ladders))
        {
            var percent = Math.Round(100 * ladder.Figures.ServedShare, MidpointRounding.AwayFromZero);
            var expected = percent == 100 && ladder.Figures.ServedShare < 1 - 1e-6 ? 99 : percent;
            Assert.Equal($"{expected}% served", new PictureWords(Language.English).ServedBy(ladder));
        }
    });

    [Fact]
    public void Several_telescopes_are_listed_in_the_title()
    {
        var scene = Scenes.Of("""
            {
              "telescopes": [
                { "apertureMm": 100, "focalLengthMm": 1000, "focuserBarrel": "1.25in" },
                { "apertureMm": 150, "focalLengthMm": 750, "focuserBarrel": "2in", "name": "The short one" }
              ],
              "catalogue": { "currency": "EUR", "items": [] },
              "limits": { "budget": 0 }
            }
            """);

        Assert.Equal("Power ladder: Telescope 1 and The short one", Drawn(scene).Title);
    }

    [Fact]
    public void An_owned_item_without_a_name_is_called_by_what_it_is()
    {
        var scene = Scenes.Of("""
            {
              "telescopes": [ { "apertureMm": 100, "focalLengthMm": 1000, "focuserBarrel": "1.25in" } ],
              "owned": [ { "kind": "eyepiece", "focalLengthMm": 20, "apparentFieldDeg": 50, "eyeReliefMm": 16, "barrel": "1.25in" } ],
              "catalogue": { "currency": "EUR", "items": [] },
              "limits": { "budget": 0 }
            }
            """);

        Assert.Contains("20 mm eyepiece, yours.", Drawn(scene).Description, StringComparison.Ordinal);
        Assert.Contains("20-mm-Okular, eigen.", new Picture(LadderPicture.Draw(scene, German.Language)).Description, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Batches))]
    public void Every_step_is_drawn_and_the_wide_ones_are_told_in_words(int batch) => Assert.All(ScenesOf(batch), scene =>
    {
        var picture = Drawn(scene);

        var jumps =
            scene.Stages.SelectMany(stage => stage.Kit.Ladders.SelectMany(ladder => ladder.Jumps().Select(jump => jump.IsEnough(stage.Enough)))).ToList();
        Assert.Equal(jumps.Count(isEnough => isEnough), picture.Of("step").Count());
        Assert.Equal(jumps.Count(isEnough => !isEnough), picture.Of("step-wide").Count());
        Assert.All(picture.Of("step-wide"), step => Assert.StartsWith("wide ", Picture.Shown(step.Element(Svg.Space + "text")!), StringComparison.Ordinal));
    });

    [Theory]
    [MemberData(nameof(Batches))]
    public void What_is_shaded_is_what_is_served(int batch) => Assert.All(ScenesOf(batch), scene =>
    {
        var legend = scene.Stages.Any(stage => stage.Kit.Ladders.Any(ladder => !ladder.Usable.IsEmpty)) ? 1 : 0;
        var shaded = Drawn(scene).Of("served").SkipLast(legend).Select(rect => ((double)rect.Attribute("x")!, (double)rect.Attribute("width")!)).ToList();

        // Telescope by telescope, stage by stage, as they are drawn.
        var expected = Enumerable.Range(0, scene.Stages[0].Kit.Ladders.Length)
            .SelectMany(telescope => scene.Stages.SelectMany(stage => ServedOf(stage.Kit.Ladders[telescope]))).ToList();
        Assert.Equal(expected.Count, shaded.Count);
        Assert.All(expected.Zip(shaded), pair =>
        {
            Assert.Equal(pair.First.X, pair.Second.Item1, HalfAPixel);
            Assert.Equal(pair.First.Width, pair.Second.Item2, HalfAPixel);
        });
    });

    [Theory]
    [MemberData(nameof(Batches))]
    public void Nothing_in_it_is_a_script_or_comes_from_elsewhere(int batch) => Assert.All(ScenesOf(batch).Select(Drawn), picture =>
    {
        string[] elements = ["svg", "title", "desc", "style", "g", "text", "rect", "circle", "path"];
        Assert.Empty(picture.Root.DescendantsAndSelf().Select(element => element.Name.LocalName).Except(elements));
        Assert.DoesNotContain(picture.Root.DescendantsAndSelf().Attributes(), attribute =>
            attribute.Name.LocalName.StartsWith("on", StringComparison.Ordinal) || attribute.Name.LocalName is "href" or "style");
        Assert.Single(picture.Root.Descendants(Svg.Space + "style"), style => style.Value == PictureStyle.Text);
    });

    [Fact]
    public void Whoever_cannot_see_it_is_told_the_same()
    {
        var scene = Scenes.Of(Repository.Example("recommendation-spectacles"));
        var picture = Drawn(scene);

        var named = picture.Root.Attribute("aria-labelledby")!.Value.Split(' ');
        Assert.Equal("img", picture.Root.Attribute("role")!.Value);
        Assert.Equal(named, picture.Root.Elements().Where(element => element.Attribute("id") is not null).Select(element => element.Attribute("id")!.Value));
        Assert.Equal("Power ladder: Balcony reflector", picture.Title);
        Assert.Contains("With the purchases: 99% served.", picture.Description, StringComparison.Ordinal);
        Assert.Contains("1.86° of sky, exit pupil 5.8 mm, 35x: Ropewalk 34.8 mm, new.", picture.Description, StringComparison.Ordinal);
        Assert.Contains("Never look at the Sun", picture.Description, StringComparison.Ordinal);
    }

    private static IEnumerable<LadderScene> ScenesOf(int batch) =>
        Enumerable.Range(FirstSeed + (batch * ScenesPerBatch), ScenesPerBatch).Select(Scenes.Random);

    private static Picture Drawn(LadderScene scene) => new(LadderPicture.Draw(scene, Language.English));

    private static IEnumerable<Picture> InEveryLanguage(LadderScene scene) => Language.All.Select(language => new Picture(LadderPicture.Draw(scene, language)));

    private static void AssertViews(LadderScene scene, IEnumerable<int> stages, IReadOnlyList<DrawnView> drawn)
    {
        var expected = from stage in stages
                       from ladder in scene.Stages[stage].Kit.Ladders.Index()
                       from view in ladder.Item.Usable
                       select (Stage: stage, Telescope: ladder.Index, View: view);
        var remaining = drawn.ToList();
        foreach (var (stage, telescope, view) in expected)
        {
            var found = Assert.Single(remaining, one => one.Stage == stage && one.Telescope == telescope && IsOf(one, view));
            remaining.Remove(found);
            AssertPlace(view, found);
        }

        Assert.Empty(remaining);
    }

    private static bool IsOf(DrawnView drawn, KitView view) =>
        drawn.Eyepiece == view.Eyepiece.Id && drawn.Barlow == view.Barlow?.Id && drawn.Factor == view.View.Factor && drawn.IsNew == view.NeedsPurchase;

    private static void AssertPlace(KitView view, DrawnView drawn)
    {
        Assert.Equal(view.View.Power, drawn.Power, 1e-4);
        Assert.Equal(PlaceOf(view.View.Power, view.View.Telescope.Range), drawn.X, HalfAPixel);
        if (view.View.IsZoom)
        {
            Assert.Equal(view.View.PowerAtShortest, drawn.PowerAtShortest!.Value, 1e-4);
            Assert.Equal(Math.Max(drawn.X + 1, PlaceOf(view.View.PowerAtShortest, view.View.Telescope.Range)), drawn.XTo!.Value, HalfAPixel);
        }
    }

    private static IEnumerable<(double X, double Width)> ServedOf(Ladder ladder)
    {
        var range = ladder.Telescope.Range;
        foreach (var stretch in ladder.Served)
        {
            var from = PlaceOf(ladder.Telescope.Axis.PowerAt(stretch.From), range);
            yield return (from, PlaceOf(ladder.Telescope.Axis.PowerAt(stretch.To), range) - from);
        }
    }

    /// <summary>Where a power belongs: the scale reaches a quarter below the range, and a tenth above it.</summary>
    private static double PlaceOf(double power, PowerRange range)
    {
        var share = Math.Log(power * 1.25 / range.Lowest) / Math.Log(range.Highest * 1.1 * 1.25 / range.Lowest);
        return Math.Clamp(Left + ((Right - Left) * share), Left, Right);
    }
}
