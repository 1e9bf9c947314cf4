using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Advice;

public sealed class SpareTests
{
    private const int Draws = 500;
    private const int Owned = 8;

    private static readonly TelescopeInUse From50To200 = Some.InUse(lowest: 50, highest: 200);

    [Fact]
    public void Spare_is_what_the_definition_says()
    {
        var (spared, kept) = (0, 0);
        for (var seed = 0; seed < Draws; seed++)
        {
            var kit = KitDraw.Make(seed, Owned, bought: 1);
            var expected = kit.Problem.Owned.Where(owned => SpareByDefinition.IsAsGood(kit, [owned])).Select(owned => owned.Id).ToList();

            Assert.True(expected.SequenceEqual(Spare.Of(kit).Select(item => item.Id)), $"seed {seed}: {string.Join(' ', expected)}");
            (spared, kept) = (spared + expected.Count, kept + Owned - expected.Count);
        }

        Assert.True(spared > Draws && kept > Draws, $"{spared} spared, {kept} kept");
    }

    [Fact]
    public void Spare_together_is_the_largest_of_all_sets_that_are()
    {
        var (fewer, priced) = (0, 0);
        for (var seed = 0; seed < Draws; seed++)
        {
            var kit = KitDraw.Make(seed, Owned, bought: 1);
            var (expected, isByPrice) = SpareByDefinition.LargestSet(kit);
            var together = Spare.Together(kit, new WorkBudget(10));

            Assert.True(
                expected.SequenceEqual(together!.Value.Select(item => item.Id)),
                $"seed {seed}: {string.Join(' ', expected)}, not {string.Join(' ', together.Value)}");
            (fewer, priced) = (fewer + (expected.Count < Spare.Of(kit).Length ? 1 : 0), priced + (isByPrice ? 1 : 0));
        }

        Assert.True(fewer > Draws / 10 && priced > Draws / 20, $"{fewer} fewer together than one at a time, {priced} by price");
    }

    [Fact]
    public void What_repeats_another_power_is_spare_and_so_is_the_other_but_not_both()
    {
        ImmutableArray<Item> owned = [Some.Eyepiece(10, id: "a", price: 20), Some.Eyepiece(10, id: "b", price: 30), Some.Eyepiece(20, id: "c")];
        var kit = Kit.Of(Some.Problem(From50To200, owned: owned), []);

        Assert.Equal(["a", "b"], Spare.Of(kit).Select(item => item.Id));
        Assert.Equal(["b"], Spare.Together(kit, new WorkBudget(1))!.Value.Select(item => item.Id));
    }

    [Fact]
    public void Of_a_hundred_items_that_are_alike_all_but_those_needed_are_spare_together()
    {
        ImmutableArray<Item> owned = [.. Enumerable.Range(0, 100).Select(i => Some.Eyepiece(5 + (i % 10 * 1.5), id: $"own-{i:00}"))];
        var kit = Kit.Of(Some.Problem(From50To200, owned: owned), []);

        Assert.Equal(100, Spare.Of(kit).Length);
        var together = Spare.Together(kit, new WorkBudget(1));
        Assert.InRange(together!.Value.Length, 90, 98);
        Assert.True(SpareByDefinition.IsAsGood(kit, together.Value));
    }

    [Fact]
    public void Where_the_work_ends_first_nothing_is_said_of_all_together()
    {
        ImmutableArray<Item> owned = [.. Enumerable.Range(0, 60).Select(i => Some.Eyepiece(5 + (i * 0.25), 40 + (i % 30), id: $"own-{i:00}"))];

        Assert.Null(Spare.Together(Kit.Of(Some.Problem(From50To200, owned: owned), []), new WorkBudget(1e-6)));
    }

    [Fact]
    public void What_alone_shows_something_that_must_be_framed_is_not()
    {
        var owned = ImmutableArray.Create(Some.Eyepiece(10, apparentFieldDeg: 70, id: "wide"), Some.Eyepiece(10, apparentFieldDeg: 69, id: "narrow"));
        var problem = Some.Problem(From50To200, owned: owned);
        var framing = problem with { Demands = new Demands { MustFrame = [new FramingDemand("nebula", 0.695)] } };
        var hopeless = problem with { Demands = new Demands { MustFrame = [new FramingDemand("nebula", 0.9)] } };

        Assert.Equal(["narrow", "wide"], Spare.Of(Kit.Of(problem, [])).Select(item => item.Id));
        Assert.Equal(["narrow"], Spare.Of(Kit.Of(framing, [])).Select(item => item.Id));
        Assert.Equal(["narrow", "wide"], Spare.Of(Kit.Of(hopeless, [])).Select(item => item.Id));
    }

    [Theory]
    [InlineData(71.0, true)] // 69.6 / 71 is more than 0.98
    [InlineData(71.1, false)]
    public void What_shows_the_widest_field_is_spare_only_where_another_shows_nearly_as_much(double widestDeg, bool isSpare)
    {
        var problem = Some.Problem(From50To200, owned: [Some.Eyepiece(20, widestDeg, id: "wide"), Some.Eyepiece(20, 69.6, id: "other")]);

        Assert.Equal(isSpare, Spare.Of(Kit.Of(problem, [])).Any(item => item.Id == "wide"));
    }

    [Fact]
    public void What_alone_is_comfortable_to_look_through_is_not_spare()
    {
        var problem = Some.Problem(From50To200, owned: [Some.Eyepiece(10, eyeReliefMm: 16, id: "easy"), Some.Eyepiece(10, eyeReliefMm: 6, id: "tight")]);

        Assert.Equal(["tight"], Spare.Of(Kit.Of(problem, [])).Select(item => item.Id));
    }

    [Fact]
    public void A_reticle_eyepiece_and_the_barlow_it_needs_are_kept_only_where_they_are_asked_for()
    {
        var problem = Some.Problem(From50To200, owned: [Some.Reticle(20), Some.Barlow(2)]);
        var asking = problem with { Demands = new Demands { ReticleLeastPower = 100 } };
        var reaching = problem with { Demands = new Demands { ReticleLeastPower = 50 } };

        Assert.Equal(2, Spare.Of(Kit.Of(problem, [])).Length);
        Assert.Empty(Spare.Of(Kit.Of(asking, [])));
        Assert.Equal(["barlow-2"], Spare.Of(Kit.Of(reaching, [])).Select(item => item.Id));
    }

    [Fact]
    public void Whoever_has_cancelled_is_not_worked_for()
    {
        Item[] owned =
        [
            .. Enumerable.Range(0, 50).Select(number => Some.Eyepiece(4 + (number / 10.0))),
            .. Enumerable.Range(0, 20).Select(number => Some.Barlow(1.2 + (number / 10.0), id: $"barlow-{number}")),
        ];
        var kit = Kit.Of(Some.Problem(Some.InUse(lowest: 20, highest: 2000), owned: [.. owned]), []);
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();

        Assert.Throws<OperationCanceledException>(() => Spare.Of(kit, new WorkBudget(1, cancelled.Token)));
    }

    [Fact]
    public void Taking_an_item_from_a_kit_leaves_the_kit_of_the_rest()
    {
        for (var seed = 0; seed < Draws / 10; seed++)
        {
            var kit = KitDraw.Make(seed, Owned, bought: 3);
            foreach (var item in kit.Items)
            {
                var rest = kit.Problem with { Owned = kit.Problem.Owned.Remove(item) };
                var (expected, left) = (Kit.Of(rest, kit.Purchases.Remove(item)), kit.Without(item));

                Assert.Equal(expected.Figures, left.Figures);
                Assert.Equal(expected.Items, left.Items);
                Assert.Equal(expected.Ladders.SelectMany(ladder => ladder.Views), left.Ladders.SelectMany(ladder => ladder.Views));
            }
        }
    }
}
