using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Advice;

public sealed class ReasonsTests
{
    private const int FirstSeed = 560_000;
    private const int Problems = 1500;
    private const double Little = 1e-6;

    private static readonly TelescopeInUse From50To200 = Some.InUse(lowest: 50, highest: 200);

    [Fact]
    public void Every_reason_is_true_by_the_exhaustive_solvers_views()
    {
        var said = new Dictionary<string, int>();
        foreach (var planned in Planned.Solvable(FirstSeed, Problems))
        {
            foreach (var purchase in Explanation.Of(planned.Problem, planned.Plan))
            {
                Assert.NotEmpty(purchase.Reasons);
                foreach (var reason in purchase.Reasons)
                {
                    said[reason.Code] = said.GetValueOrDefault(reason.Code) + 1;
                    Assert.True(IsTrue(reason, purchase.Item.Id, planned), $"seed {planned.Seed}, {purchase.Item}: {reason.Code}");
                }
            }
        }

        Assert.Equal([Reasons.NotProvedNeeded], Reasons.Codes.Except(said.Keys));
    }

    [Fact]
    public void A_zoom_covers_a_stretch_and_may_reach_an_end() =>
        Assert.Equal([Reasons.ZoomCovers, Reasons.ReachesHighEnd], ReasonsFor(Some.Zoom(5, 10), owned: [Some.Eyepiece(20)]).Select(reason => reason.Code));

    [Theory]
    [InlineData(5, 10, null)]
    [InlineData(3, 10, Filling.Past)]
    [InlineData(4, 4.5, Filling.Beyond)]
    public void A_zoom_may_end_at_an_end_or_reach_past_it_or_lie_beyond_it(double shortestMm, double longestMm, string? variant) => Assert.Equal(
        variant, ReasonsFor(Some.Zoom(shortestMm, longestMm), owned: [Some.Eyepiece(20)]).Single(reason => reason.Code == Reasons.ReachesHighEnd).Variant);

    [Theory]
    [InlineData(4.0, 21.0, Reasons.ReachesHighEnd, Filling.Beyond)]
    [InlineData(5.0, 21.0, Reasons.ReachesHighEnd, null)]
    [InlineData(6.0, 21.0, Reasons.ReachesHighEnd, null)]
    [InlineData(24.0, 5.0, Reasons.ReachesLowEnd, Filling.Beyond)]
    [InlineData(20.0, 5.0, Reasons.ReachesLowEnd, null)]
    [InlineData(15.0, null, Reasons.FillsStep, Reasons.First)]
    public void A_reason_tells_apart_what_comes_first_and_what_lies_a_little_beyond_the_range(
        double focalLengthMm, double? ownedMm, string code, string? variant)
    {
        var reason = ReasonsFor(Some.Eyepiece(focalLengthMm), ownedMm is { } mm ? [Some.Eyepiece(mm)] : []).Single();

        Assert.Equal((code, variant), (reason.Code, reason.Variant));
    }

    [Fact]
    public void A_zoom_whose_powers_all_lie_beyond_an_end_covers_them_and_not_a_point()
    {
        var reason = ReasonsFor(Some.Zoom(21, 24), [Some.Eyepiece(5)]).Single(one => one.Code == Reasons.ZoomCovers);

        Assert.Equal((1000 / 24.0, 1000 / 21.0), (ValueOf(reason, "from"), ValueOf(reason, "to")));
    }

    [Fact]
    public void A_barlow_names_the_eyepieces_of_which_it_makes_powers()
    {
        var reason = ReasonsFor(Some.Barlow(2), owned: [Some.Eyepiece(20, id: "a"), Some.Eyepiece(15, id: "b")]).Single(one => one.Code == Reasons.BarlowAdds);

        Assert.Equal([100.0, 1000 * 2 / 15.0], (double[])ValueOf(reason, "powers"));
        Assert.Equal(["a", "b"], (string[])ValueOf(reason, "eyepieceIds"));
    }

    [Fact]
    public void A_reticle_eyepiece_and_a_barlow_for_it_are_told_apart()
    {
        Assert.Contains(Reasons.Reticle, ReasonsFor(Some.Reticle(10), [], leastPower: 100).Select(reason => reason.Code));
        Assert.Contains(Reasons.ReticlePower, ReasonsFor(Some.Barlow(2), [Some.Reticle(20)], leastPower: 100).Select(reason => reason.Code));
    }

    [Fact]
    public void What_adds_nothing_is_said_not_to_be_proved_needed() =>
        Assert.Equal([Reasons.NotProvedNeeded], ReasonsFor(Some.Eyepiece(20, id: "again"), [Some.Eyepiece(20)]).Select(reason => reason.Code));

    private static ImmutableArray<Remark> ReasonsFor(Item item, ImmutableArray<Item> owned, double? leastPower = null)
    {
        var kit = Kit.Of(Some.Problem(From50To200, owned: owned) with { Demands = new Demands { ReticleLeastPower = leastPower } }, [item]);
        return Reasons.For(item, kit, kit.Without(item), wish: null);
    }

    private static object ValueOf(Remark remark, string name) => remark.Values.Single(value => value.Name == name).Value!;

    private static bool IsTrue(Remark reason, string id, Planned planned)
    {
        var search = new OracleSearch(planned.Asked);
        List<OracleItem> kit = [.. search.Bench.Owned, .. search.Items(search.SetOf(planned.Ids))];
        List<OracleView> views = [.. search.Bench.UsableViews(kit).Where(view => IsIn(reason, view))];
        OracleView[] added = [.. views.Where(view => view.Eyepiece.Id == id || view.Barlow?.Id == id)];
        return reason.Code switch
        {
            Reasons.FillsStep or Reasons.ReachesLowEnd or Reasons.ReachesHighEnd => Fills(reason, added, views.Except(added)),
            Reasons.ZoomCovers => added.Any(view => view.Barlow is null && Covers(view, reason)),
            Reasons.BarlowAdds =>
                added.Select(view => Math.Round(view.LowestPower, 6)).Order()
                    .SequenceEqual(((double[])ValueOf(reason, "powers")).Select(power => Math.Round(power, 6))),
            Reasons.AskedFor => planned.Asked.Preferences.MustInclude.Contains(id),
            Reasons.Frames => planned.Asked.Preferences.MustFrame.Any(frame =>
                frame.Name == (string?)ValueOf(reason, "name") && IsNeededFor(frame.WidthDeg, frame.Telescope, id, search, planned)),
            Reasons.GrantsWideView => IsNeededFor(planned.Plan.Wish!.TrueFieldDeg, null, id, search, planned),
            Reasons.Reticle or Reasons.ReticlePower =>
                !search.Bench.HasServingReticle([.. kit.Where(item => item.Id != id)], planned.Asked.Preferences.ReticleLeastPower!.Value),
            _ => false,
        };
    }

    private static bool IsNeededFor(double widthDeg, string? telescope, string id, OracleSearch search, Planned planned) =>
        OracleTolerance.RatioAtLeast(search.WidestField(search.SetOf(planned.Ids), telescope), widthDeg)
        && search.WidestField(search.SetOf(planned.Ids.Remove(id)), telescope) < widthDeg;

    private static bool IsIn(Remark reason, OracleView view) =>
        reason.Values.FirstOrDefault(value => value.Name == "telescope")?.Value is not string telescope || view.Scale.Telescope.Name == telescope;

    /// <summary>Nothing else lies between the ends of the jump, and a view of the item does.</summary>
    private static bool Fills(Remark reason, OracleView[] added, IEnumerable<OracleView> others)
    {
        var (from, to, power) = ((double)ValueOf(reason, "from"), (double)ValueOf(reason, "to"), (double)ValueOf(reason, "power"));
        var isFree = others.All(view => view.Scale.Cut(view.HighestPower) <= from * (1 + Little) || view.Scale.Cut(view.LowestPower) >= to * (1 - Little));
        var own = added.Where(view => view.LowestPower <= power * (1 + Little) && view.HighestPower >= power * (1 - Little)).ToList();
        var isAtItsEnd = reason.Code switch
        {
            Reasons.ReachesLowEnd => others.All(view => view.Scale.Cut(view.LowestPower) >= to * (1 - Little)),
            Reasons.ReachesHighEnd => others.All(view => view.Scale.Cut(view.HighestPower) <= from * (1 + Little)),
            _ => true,
        };
        return isFree && isAtItsEnd && own.Exists(view => view.Scale.Cut(power) >= from * (1 - Little) && view.Scale.Cut(power) <= to * (1 + Little));
    }

    /// <summary>Its powers of use; all that it has, where none of them lies within the range.</summary>
    private static bool Covers(OracleView view, Remark reason)
    {
        var (from, to) = (view.Scale.Cut(view.LowestPower), view.Scale.Cut(view.HighestPower));
        return from < to
            ? IsNear(from, reason, "from") && IsNear(to, reason, "to")
            : IsNear(view.LowestPower, reason, "from") && IsNear(view.HighestPower, reason, "to");
    }

    private static bool IsNear(double power, Remark reason, string name) => Math.Abs(power / (double)ValueOf(reason, name) - 1) < Little;
}
