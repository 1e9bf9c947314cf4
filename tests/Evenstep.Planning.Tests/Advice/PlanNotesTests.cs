using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Tests.Agreement;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Advice;

/// <summary>What an adviser remarks is true, by the exhaustive solver's figures.</summary>
public sealed class PlanNotesTests
{
    private const int FirstSeed = 550_000;
    private const int Problems = 1200;

    /// <summary>A view this much wider is an upgrade, by common practice.</summary>
    private const double MuchWider = 1.25;

    private const decimal AllTheMoney = 1_000_000;

    private static readonly ImmutableArray<Planned> Plans = [.. Planned.Solvable(FirstSeed, Problems)];

    [Fact]
    public void The_wider_view_is_the_cheapest_that_may_be_bought_as_well()
    {
        var found = 0;
        foreach (var planned in Plans)
        {
            var expected = CheapestWider(planned);
            var wider = WiderView.Beyond(planned.Kit);

            Assert.True(expected?.Id == wider?.Item.Id, $"seed {planned.Seed}: {expected?.Id}, not {wider?.Item.Id}");
            found += wider is null ? 0 : 1;
        }

        Assert.True(found > Problems / 20, $"only {found} found");
    }

    [Fact]
    public void The_fields_of_the_wider_view_are_those_of_the_kit_and_of_the_kit_with_it()
    {
        foreach (var planned in Plans)
        {
            if (WiderView.Beyond(planned.Kit) is { } wider)
            {
                var search = new OracleSearch(WithRoom(planned));
                Assert.Equal(search.WidestField(search.SetOf(planned.Ids), null), wider.TrueFieldDeg, Tolerance.Value);
                Assert.Equal(search.WidestField(search.SetOf([.. planned.Ids, wider.Item.Id]), null), wider.WiderFieldDeg, Tolerance.Value);
            }
        }
    }

    [Fact]
    public void The_zoom_takes_in_as_many_eyepieces_as_any_and_is_the_cheapest_of_those()
    {
        var found = 0;
        foreach (var planned in Plans)
        {
            var expected = BestZoom(planned);
            var zoom = ZoomInPlace.Of(planned.Kit);

            Assert.True(expected.Zoom?.Id == zoom?.Zoom.Id, $"seed {planned.Seed}: {expected.Zoom?.Id}, not {zoom?.Zoom.Id}");
            Assert.Equal(expected.Eyepieces, zoom?.Eyepieces.Select(item => item.Id) ?? []);
            found += zoom is null ? 0 : 1;
        }

        Assert.True(found > 2, $"only {found} found");
    }

    [Fact]
    public void Where_something_may_be_bought_a_wide_view_is_not_granted_only_because_of_what_else_is_asked()
    {
        var demanding = 0;
        foreach (var planned in Plans.Where(planned => planned.Plan.Wish is { Granted: false } && planned.Problem.Limits.MaxPurchases > 0))
        {
            var note = PlanNotes.Of(planned.Problem, planned.Plan).Single(one => one.Code == PlanNotes.WideViewNotGranted);
            Assert.Equal(CheapestGranting(planned), note.Values.Single(value => value.Name == "itemId").Value);
            var free = planned.Asked.Preferences with { MustInclude = [], MustFrame = [], ReticleLeastPower = null };
            var search = new OracleSearch(planned.Asked with { Preferences = free });
            Assert.Contains(search.AllowedSets(), set => OracleTolerance.RatioAtLeast(search.WidestField(set, null), planned.Plan.Wish!.TrueFieldDeg));
            demanding++;
        }

        Assert.True(demanding > 3, $"only {demanding} not granted");
    }

    [Fact]
    public void A_wide_view_is_not_granted_where_nothing_may_be_bought()
    {
        var observer = new Observer { Observes = [Interest.LargeNebulae] };
        var problem = Some.Problem(catalogue: [Some.Eyepiece(20, id: "wide"), Some.Eyepiece(10)], observer: observer);
        var nothing = problem with { Limits = problem.Limits with { MaxPurchases = 0 } };

        var note = PlanNotes.Of(nothing, Planner.Solve(nothing, new WorkBudget(Comparison.WorkLimit))).Single(one => one.Code == PlanNotes.WideViewNotGranted);

        Assert.Equal(("wide", 0), (note.Values.Single(value => value.Name == "itemId").Value, note.Values.Single(value => value.Name == "maxPurchases").Value));
    }

    [Fact]
    public void Purchases_of_another_parfocal_group_than_all_that_is_owned_are_named()
    {
        var problem = Some.Problem(Some.InUse(lowest: 50, highest: 200), owned: [InGroup(Some.Eyepiece(20, id: "own"), "a"), Some.Eyepiece(15)]);

        Assert.Equal(
            ["other"], NotParfocal(problem, InGroup(Some.Eyepiece(10, id: "other"), "b"), InGroup(Some.Eyepiece(8, id: "same"), "a"), Some.Eyepiece(6)));
        Assert.Empty(NotParfocal(problem with { Owned = [Some.Eyepiece(20)] }, InGroup(Some.Eyepiece(10), "b")));
    }

    private static IEnumerable<string> NotParfocal(PurchaseProblem problem, params ImmutableArray<Item> purchases)
    {
        var plan = new Plan { Outcome = Outcome.Optimal, Purchases = purchases, Candidacy = Candidacy.Of(problem) };
        return PlanNotes.Of(problem, plan).Where(note => note.Code == PlanNotes.NotParfocal)
            .SelectMany(note => (string[])note.Values.Single(value => value.Name == "itemIds").Value!);
    }

    private static Item InGroup(Item item, string group) => new(item.Id, item.Optic) { Price = item.Price, ParfocalGroup = group };

    private static OracleProblem WithRoom(Planned planned) => planned.Asked with
    {
        Limits = planned.Asked.Limits with { Budget = AllTheMoney, MaxPurchases = planned.Ids.Length + 1 },
    };

    private static OracleItem? CheapestWider(Planned planned)
    {
        var observes = planned.Asked.Observer.Observes;
        if (observes.Count > 0 && !observes.Contains(OracleInterest.LargeNebulae) && !observes.Contains(OracleInterest.StarClusters))
        {
            return null;
        }

        var search = new OracleSearch(WithRoom(planned));
        var widest = search.WidestField(search.SetOf(planned.Ids), null);
        return widest == 0 ? null : search.Candidates
            .Where(item => !planned.Ids.Contains(item.Id))
            .Where(item => search.Bench.UsableViews([item]).Any(view => OracleTolerance.AtLeast(view.TrueFieldDeg / widest, MuchWider)))
            .Where(item => search.IsAllowed(search.SetOf([.. planned.Ids, item.Id])))
            .OrderBy(item => item.Price).ThenBy(item => item.Id, StringComparer.Ordinal)
            .FirstOrDefault();
    }

    private static (OracleItem? Zoom, IEnumerable<string> Eyepieces) BestZoom(Planned planned)
    {
        if (planned.Asked.Preferences.Zooms == OracleUse.Allow)
        {
            return (null, []);
        }

        var search = new OracleSearch(planned.Asked with { Preferences = planned.Asked.Preferences with { Zooms = OracleUse.Allow } });
        OracleItem[] bought = [.. search.Items(search.SetOf(planned.Ids)).Where(item => item.Kind == OracleKind.Eyepiece && !item.IsReticle)];
        return search.Candidates.Where(item => item.Kind == OracleKind.Zoom && !planned.Ids.Contains(item.Id))
            .Select(
                zoom => (
                    Zoom: (OracleItem?)zoom,
                    Eyepieces: bought.Where(item => TakesIn(search.Bench, zoom, item)).Select(item => item.Id).Order(StringComparer.Ordinal)))
            .Where(one => one.Eyepieces.Count() > 1)
            .OrderByDescending(one => one.Eyepieces.Count()).ThenBy(one => one.Zoom!.Price).ThenBy(one => one.Zoom!.Id, StringComparer.Ordinal)
            .FirstOrDefault((null, Enumerable.Empty<string>().Order()));
    }

    private static bool TakesIn(OracleBench bench, OracleItem zoom, OracleItem eyepiece) => bench.UsableViews([eyepiece]).All(view =>
        bench.UsableViews([zoom]).Any(stretch => stretch.Scale == view.Scale
            && OracleTolerance.AtLeast(view.Start, stretch.Start) && OracleTolerance.AtMost(view.End, stretch.End)));

    private static string CheapestGranting(Planned planned)
    {
        var search = new OracleSearch(planned.Asked);
        return search.Candidates
            .Where(item => search.Bench.UsableViews([item]).Any(view => OracleTolerance.RatioAtLeast(view.TrueFieldDeg, planned.Plan.Wish!.TrueFieldDeg)))
            .OrderBy(item => item.Price).ThenBy(item => item.Id, StringComparer.Ordinal)
            .First().Id;
    }
}
