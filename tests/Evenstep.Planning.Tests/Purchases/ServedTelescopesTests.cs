using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Purchases;

public sealed class ServedTelescopesTests
{
    private static readonly TelescopeInUse Wide = Some.InUse(Some.Telescope(focuser: Barrel.Inch125), 25, 200);
    private static readonly TelescopeInUse Small = Some.InUse(Some.Telescope(focuser: Barrel.Inch0965), 25, 200);

    [Fact]
    public void A_telescope_that_nothing_fits_stands_aside() =>
        Assert.Equal([0], Served([Wide, Small], [], Some.Eyepiece(20)));

    [Fact]
    public void What_is_owned_serves_it_too() => Assert.Equal(
        [0, 1], Served([Wide, Small], [Some.Eyepiece(20, barrel: Barrel.Inch0965, id: "owned")], Some.Eyepiece(20)));

    [Fact]
    public void If_all_would_stand_aside_none_does() =>
        Assert.Equal([0, 1], Served([Small, Small], [], Some.Eyepiece(20)));

    /// <summary>A view that only a Barlow makes usable serves as well: 30 mm give 33 times, of no use from 60 on, and 67 through a doubler.</summary>
    [Fact]
    public void A_view_through_a_barlow_serves_it()
    {
        var powerful = Some.InUse(Some.Telescope(), 60, 200);
        Assert.Equal([1], Served([powerful, Wide], [Some.Eyepiece(30)]));
        Assert.Equal([0, 1], Served([powerful, Wide], [Some.Eyepiece(30), Some.Barlow(2)]));
    }

    [Fact]
    public void Neither_a_reticle_eyepiece_nor_a_view_of_no_use_serves_it()
    {
        Assert.Equal([1], Served([Small, Wide], [Some.Reticle(20, barrel: Barrel.Inch0965), Some.Eyepiece(20)]));
        Assert.Equal([1], Served([Small, Wide], [Some.Eyepiece(90, barrel: Barrel.Inch0965), Some.Eyepiece(20, id: "other")]));
    }

    [Fact]
    public void The_figures_that_decide_leave_it_out_and_those_of_the_kit_do_not()
    {
        var problem = Some.Problem(Wide, owned: [Some.Eyepiece(20)]) with { Telescopes = [Wide, Small] };
        var candidacy = Candidacy.Of(problem);
        var kit = Kit.Of(problem, []);
        Assert.Equal(0, Assert.Single(candidacy.Telescopes));
        Assert.Equal(kit.Ladders[0].Figures.LargestStep, kit.FiguresIn(candidacy.Telescopes).LargestStep);
        Assert.Equal(2 * Small.Axis.Length, kit.Figures.LargestStep.Ln, Tolerance.Value);
    }

    private static int[] Served(ImmutableArray<TelescopeInUse> telescopes, ImmutableArray<Item> owned, params Item[] candidates) =>
        [.. ServedTelescopes.Of(Some.Problem(owned: owned, catalogue: [.. candidates]) with { Telescopes = telescopes }, [.. candidates])];
}
