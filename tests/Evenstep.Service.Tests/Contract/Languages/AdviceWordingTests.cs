using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Tests;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Tests.Contract.Languages;

/// <summary>What an adviser says, word for word.</summary>
public sealed class AdviceWordingTests
{
    private static readonly TelescopeInUse From50To200 = Some.InUse(lowest: 50, highest: 200);

    private static readonly Item Own25 = Own(new Eyepiece(25, 50, 16, Barrel.Inch125));
    private static readonly Item OwnZoom = Own(new Zoom(8, 24.5, 60, 42, 16, Barrel.Inch125));
    private static readonly Item OwnBarlow = Own(new Barlow([1.5, 2], Barrel.Inch125));

    [Fact]
    public void An_owned_item_without_a_name_is_called_by_what_it_is()
    {
        AssertReason(Some.Barlow(2), [Own25], "Adds 80x (with your 25 mm eyepiece).", "Ergibt zusätzlich 80-fach (mit Ihrem 25-mm-Okular).");
        AssertReason(Some.Barlow(2), [Named(Own25, "Ten")], "Adds 80x (with Ten).", "Ergibt zusätzlich 80-fach (mit Ten).");
        Assert.Equal("Your 8 to 24.5 mm zoom: at its longest", ZoomCaution(OwnZoom, Language.English)[..38]);
        Assert.Equal("Ihr Zoomokular 8 bis 24,5 mm: Bei der längsten", ZoomCaution(OwnZoom, German.Language)[..46]);
        Assert.StartsWith("own zoom: at its longest", ZoomCaution(Named(OwnZoom, "own zoom"), Language.English), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("en", "Your 25 mm eyepiece through your 1.5 and 2x Barlow at 2x (80x)")]
    [InlineData("de", "Ihr 25-mm-Okular mit Ihrer 1,5 und 2-fach-Barlowlinse (Faktor 2, 80-fach)")]
    public void So_it_is_in_a_view(string tag, string text)
    {
        var kit = Kit.Of(Some.Problem(From50To200, owned: [Own25, OwnBarlow]), []);

        Assert.Equal(text, ViewPhrase.Of(kit.Ladders[0].Views.Single(view => view.View.Factor == 2)).In(LanguageOf(tag)));
    }

    [Fact]
    public void An_item_of_the_catalogue_without_a_name_is_called_by_its_id() => AssertReason(
        Some.Barlow(2), [Some.Eyepiece(25, id: "e-25")], "Adds 80x (with e-25).", "Ergibt zusätzlich 80-fach (mit e-25).");

    [Fact]
    public void A_Barlow_adds_a_stretch_of_a_zoom() => AssertReason(
        Some.Barlow(2),
        [Some.Zoom(10, 20, id: "zoom")],
        "Adds 100x to 200x (with zoom).",
        "Ergibt zusätzlich 100-fach bis 200-fach (mit zoom).");

    [Fact]
    public void What_else_a_power_needs_is_named()
    {
        AssertReason(
            Some.Eyepiece(10),
            [Some.Eyepiece(20), Named(Some.Barlow(2), "Doubler")],
            "Reaches up to 200x (with Doubler); without it the highest power would be 100x, though powers up to 200x are useful.",
            "Reicht hinauf bis 200-fach (mit Doubler); ohne dieses Teil wäre 100-fach die höchste Vergrößerung, "
            + "sinnvoll sind Vergrößerungen aber bis 200-fach.");
    }

    [Theory]
    [InlineData(50, "it gives 50x; at least 50x is wanted.", "bei 50-facher Vergrößerung; gewünscht ist mindestens 50-fache.")]
    [InlineData(80, "with Doubler it gives 100x; at least 80x is wanted.", "mit Doubler bei 100-facher Vergrößerung; gewünscht ist mindestens 80-fache.")]
    public void A_reticle_eyepiece_names_no_more_than_will_do(double least, string english, string german)
    {
        var problem = Some.Problem(From50To200, owned: [Named(Some.Barlow(2), "Doubler")]) with { Demands = new Demands { ReticleLeastPower = least } };
        var kit = Kit.Of(problem, [Some.Reticle(20)]);

        var reason = Reasons.For(kit.Purchases[0], kit, kit.Without(kit.Purchases[0]), plan: null)[0];
        var said = ReasonWriter.Write(reason, problem).Text;

        Assert.EndsWith(english, said.In(Language.English), StringComparison.Ordinal);
        Assert.EndsWith(german, said.In(German.Language), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("en", "With it 91% of the useful powers are comfortable to look at; without it 42%.")]
    [InlineData("de", "Damit sind 91 % der sinnvollen Vergrößerungen bequem zu nutzen, ohne dieses Teil 42 %.")]
    public void Comfort_is_told_in_whole_percent(string tag, string text) => Assert.Equal(
        text,
        Say(tag, "reason/better-views", RemarkValue.Percent("comfortablePercent", 91.2), RemarkValue.Percent("withoutPercent", 41.6)));

    [Theory]
    [InlineData("en", "The apparent field is not stated, and so it is assumed: your 25 mm eyepiece (50°).")]
    [InlineData("de", "Das scheinbare Gesichtsfeld ist nicht angegeben und daher angenommen: Ihr 25-mm-Okular (50°).")]
    public void What_was_assumed_is_named(string tag, string text)
    {
        var kit = Kit.Of(Some.Problem(From50To200, owned: [Own(Eyepiece.Of(25, null, 16, null, Barrel.Inch125))]), []);

        Assert.Contains(text, KitRemarks.NotesOf(kit).Select(note => note.Text.In(LanguageOf(tag))));
    }

    [Theory]
    [InlineData(null, null, "(taken to be 6 mm, for neither pupil nor age is known)")]
    [InlineData(5.5, null, "wider than your eye's pupil (5.5 mm)")]
    [InlineData(null, 55.0, "wider than the eye's pupil usually is at your age (5.77 mm)")]
    public void A_pupil_is_yours_only_if_you_gave_it(double? pupilMm, double? age, string part)
    {
        var telescope = Some.InUse(Some.Telescope(200, 1000, name: "fast"), lowest: 25, highest: 200);
        var problem = Some.Problem(telescope, owned: [Some.Eyepiece(32)]) with { Observer = new Observer { PupilMm = pupilMm, Age = age } };

        var said = KitRemarks.CautionsOf(Kit.Of(problem, [])).Select(caution => caution.Text.In(Language.English)).ToList();

        var wide = Assert.Single(said, text => text.StartsWith("fast: at 31x with eyepiece-32 the exit pupil is 6.4 mm", StringComparison.Ordinal));
        Assert.Contains(part, wide, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("note/suggested-point/steps", "the widest jump is from 50x to 91x.")]
    [InlineData("note/no-regret", "Wherever you stop, the widest step between your powers is at most 2.72 times as large as")]
    public void Steps_are_told_as_times(string key, string beginning) => Assert.StartsWith(beginning, Say(
        "en",
        key,
        RemarkValue.Ratio("largestStep", 1.8123),
        RemarkValue.Power("from", 50),
        RemarkValue.Power("to", 90.6),
        RemarkValue.Ratio("timesAsLarge", 2.7189)), StringComparison.Ordinal);

    [Theory]
    [InlineData("en", "None of the useful powers are comfortable to look at, instead of 42%.")]
    [InlineData("de", "Keine der sinnvollen Vergrößerungen ist bequem; sonst sind es 42 %.")]
    public void No_comfort_is_told_as_none(string tag, string text) =>
        Assert.Equal(text, Say(tag, "difference/less-comfortable/none", RemarkValue.Percent("otherPercent", 41.6)));

    [Theory]
    [InlineData("en", "Telescope 1: at f/5 it is too fast for some of what you have: a (made for f/6 or slower) and b (made for f/8 or slower). Stars")]
    [InlineData("de", "Teleskop 1: Mit f/5 ist es zu lichtstark für einen Teil Ihrer Ausrüstung: a (ausgelegt bis f/6) und b (ausgelegt bis f/8). Sterne")]
    public void Each_item_is_told_with_its_own_light_cone(string tag, string beginning)
    {
        Item[] slow =
        [
            new("a", (Eyepiece)Some.Eyepiece(15).Optic with { FastestFocalRatio = 6 }),
            new("b", (Eyepiece)Some.Eyepiece(10).Optic with { FastestFocalRatio = 8 }),
        ];
        var telescope = Some.InUse(Some.Telescope(200, 1000, name: "telescope 1"), lowest: 50, highest: 300);

        var note = KitRemarks.NotesOf(Kit.Of(Some.Problem(telescope, owned: [.. slow]), [])).Single(one => one.Code == KitNotes.FastTelescope);

        Assert.StartsWith(beginning, note.Text.In(LanguageOf(tag)), StringComparison.Ordinal);
    }

    private static void AssertReason(Item bought, ImmutableArray<Item> owned, string english, string german)
    {
        var problem = Some.Problem(From50To200, owned: owned);
        var kit = Kit.Of(problem, [bought]);
        var said = Reasons.For(bought, kit, kit.Without(bought), plan: null).Select(reason => ReasonWriter.Write(reason, problem).Text).ToList();

        Assert.Contains(english, said.Select(text => text.In(Language.English)));
        Assert.Contains(german, said.Select(text => text.In(German.Language)));
    }

    private static string ZoomCaution(Item zoom, Language language) => KitRemarks.CautionsOf(Kit.Of(Some.Problem(From50To200, owned: [zoom]), []))
        .Single(caution => caution.Code == Cautions.ZoomFieldNarrow).Text.In(language);

    private static string Say(string tag, string key, params RemarkValue[] values) => new Sentence(key, [.. values]).In(LanguageOf(tag));

    private static Language LanguageOf(string tag) => Language.All.Single(language => language.Tag == tag);

    private static Item Own(Optic optic) => new("owned-1", optic) { IsOwn = true };

    private static Item Named(Item item, string name) => new(item.Id, item.Optic) { Name = name, IsOwn = item.IsOwn };
}
