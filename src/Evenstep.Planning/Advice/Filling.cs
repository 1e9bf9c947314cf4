using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>The jump that views added to a ladder land in.</summary>
/// <param name="Jump">Of the ladder without them, the widest that any of them lands in; the whole range, if it shows nothing.</param>
/// <param name="View">The one that does most for the jump.</param>
public sealed record Filling(Jump Jump, KitView View)
{
    /// <summary>All of it lies a little outside of the range, and counts as the end.</summary>
    public const string Beyond = "beyond";

    /// <summary>A zoom, part of which lies within the range and part outside.</summary>
    public const string Past = "past";

    /// <summary>The power by which the view serves the jump: of a zoom's the farthest out, or the one nearest to the middle.</summary>
    public double Power => PowerIn(Jump, View.View);

    /// <summary>Where the view lies at an end of the range, by what can be read: <see cref="Beyond"/> it, <see cref="Past"/> it, or
    /// (null) not out of the range.</summary>
    public string? Variant => Jump.Place switch
    {
        JumpPlace.LowEnd => VariantOf(
            Reads(View.View.PowerAtShortest).ReadsBelow(Reads(Jump.FromPower)), Reads(View.View.Power).ReadsBelow(Reads(Jump.FromPower))),
        JumpPlace.HighEnd => VariantOf(
            Reads(Jump.ToPower).ReadsBelow(Reads(View.View.Power)), Reads(Jump.ToPower).ReadsBelow(Reads(View.View.PowerAtShortest))),
        _ => null,
    };

    /// <summary>A step that becomes this many times smaller is noticeably smaller: common practice, no source.</summary>
    public const double NoticeablySmaller = 1.05;

    /// <param name="ladder">Without the views.</param>
    /// <param name="added">Usable views.</param>
    /// <param name="counts">Which jumps count.</param>
    /// <param name="leastShrinking">How many times smaller the step must become.</param>
    /// <returns>Null if none of the views lands in a jump that counts and becomes so much smaller.</returns>
    public static Filling? Of(Ladder ladder, IReadOnlyList<KitView> added, Func<Jump, bool> counts, double leastShrinking = 1)
    {
        IEnumerable<Jump> jumps = ladder.Usable.IsEmpty ? [WholeRange(ladder.Telescope)] : ladder.Jumps();
        foreach (var jump in jumps.Where(counts).OrderByDescending(jump => jump.Weighed.Ratio))
        {
            KitView[] landed = [.. added.Where(view => ladder.Usable.IsEmpty || LandsIn(view, jump, ladder.Telescope.Axis))];
            if (landed.Length > 0 && (ladder.Usable.IsEmpty
                || Tolerance.AtLeast(ShrinkingBy(landed, jump, ladder.Telescope.Axis), leastShrinking)))
            {
                return new Filling(jump, ladder.Usable.IsEmpty ? landed[0] : Foremost(landed, jump));
            }
        }

        return null;
    }

    /// <summary>How many times smaller the largest step is that is left of a jump.</summary>
    private static double ShrinkingBy(KitView[] landed, Jump jump, PowerAxis axis)
    {
        var (from, to) = (axis.PositionOf(jump.FromPower), axis.PositionOf(jump.ToPower));
        var (reached, largest, weight) = (from, 0.0, jump.Place == JumpPlace.LowEnd ? 2 : 1);
        foreach (var reach in landed.Select(view => view.Reach).OrderBy(reach => reach.From))
        {
            (largest, weight) = (Math.Max(largest, weight * (reach.From - reached)), 1);
            reached = Math.Max(reached, reach.To);
        }

        return jump.Weighed.Ratio / new Step(Math.Max(largest, (jump.Place == JumpPlace.HighEnd ? 2 : 1) * (to - reached))).Ratio;
    }

    /// <summary>Beyond an end of the range counts as that end.</summary>
    private static bool LandsIn(KitView view, Jump jump, PowerAxis axis)
    {
        var (from, to) = (axis.PositionOf(jump.FromPower), axis.PositionOf(jump.ToPower));
        var (low, high) = (jump.Place == JumpPlace.LowEnd ? from - 1 : from, jump.Place == JumpPlace.HighEnd ? to + 1 : to);
        return Tolerance.Above(view.View.To, low) && Tolerance.Below(view.View.From, high);
    }

    /// <summary>The view that does most for a jump: the farthest out at an end of the range, else the one nearest to the
    /// middle.</summary>
    private static KitView Foremost(KitView[] landed, Jump jump) => jump.Place switch
    {
        JumpPlace.LowEnd => landed.MinBy(view => view.View.Power)!,
        JumpPlace.HighEnd => landed.MaxBy(view => view.View.PowerAtShortest)!,
        _ => landed.MinBy(view => Math.Abs(Math.Log(PowerIn(jump, view.View) / MiddleOf(jump))))!,
    };

    private static double PowerIn(Jump jump, View view) => jump.Place switch
    {
        JumpPlace.LowEnd => view.Power,
        JumpPlace.HighEnd => view.PowerAtShortest,
        _ => Math.Clamp(MiddleOf(jump), view.Power, view.PowerAtShortest),
    };

    private static string? VariantOf(bool isOutside, bool isPartlyOutside) => isOutside ? Beyond : isPartlyOutside ? Past : null;

    private static RemarkValue Reads(double power) => RemarkValue.Power("", power);

    private static double MiddleOf(Jump jump) => Math.Sqrt(jump.FromPower * jump.ToPower);

    private static Jump WholeRange(TelescopeInUse telescope) =>
        new(telescope.Range.Lowest, telescope.Range.Highest, telescope.Axis.Length, JumpPlace.BetweenViews);
}
