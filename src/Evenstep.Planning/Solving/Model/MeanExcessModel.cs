using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model;

/// <summary>
/// States a kit's mean excess to the solver. Every place of the axis is either near enough to a view, or lies in a jump
/// that is paid for; a jump may be taken only between views that exist. Paying for one wide jump is never cheaper than
/// for the narrower ones it could be split into, since the excess grows as a square: so the least payment is the kit's
/// mean excess, and no clause has to say that nothing stands between the two ends of a jump.
/// </summary>
internal static class MeanExcessModel
{
    /// <summary>
    /// Excess is counted in units of 1e-11. A kit has at most a few dozen jumps, each rounded by half a unit: together far
    /// less than the tolerance of 1e-9 that comparisons allow, so the rounding never decides.
    /// </summary>
    private const double UnitsPerExcess = 1e11;

    /// <summary>Adds the jumps up to the limits, and returns what they cost together, in units.</summary>
    /// <param name="model">To be added to.</param>
    /// <param name="lnLargestStep">No jump is wider.</param>
    /// <param name="mostExcess">A mean excess that the set looked for does not exceed.</param>
    public static LinearExpr Add(PurchaseModel model, double lnLargestStep, double mostExcess)
    {
        var enough = model.Problem.EnoughMismatch;
        Jumps[] telescopes = [.. model.Space.Telescopes.Select(views => new Jumps(views, enough, model.Space.Telescopes.Length))];
        double[] least = [.. telescopes.Select(jumps => jumps.LeastExcess())];
        List<ILiteral> paid = [];
        List<long> units = [];
        for (var t = 0; t < telescopes.Length; t++)
        {
            var elsewhere = least.Sum() - least[t];
            PossibleJump[] jumps = [.. telescopes[t].UpTo(lnLargestStep, mostExcess - elsewhere)];
            ILiteral[] taken = [.. jumps.Select(jump => Taken(model, jump))];
            RequireCover(model, model.Space.Telescopes[t], jumps, taken);
            paid.AddRange(taken);
            units.AddRange(jumps.Select(jump => Units(jump.Excess)));
        }

        return LinearExpr.WeightedSum(paid, units);
    }

    /// <summary>A mean excess in units, rounded up with the tolerance.</summary>
    public static long UnitsAtMost(double excess) => Units(excess + Tolerance.Value);

    private static long Units(double excess) => (long)Math.Round(excess * UnitsPerExcess);

    private static BoolVar Taken(PurchaseModel model, PossibleJump jump)
    {
        var taken = model.Cp.NewBoolVar("");
        PossibleView?[] sides = [jump.Below, jump.Above];
        ILiteral[] needed = [.. sides.OfType<PossibleView>().Where(view => !view.IsCertain).Select(model.Exists)];
        if (needed.Length > 0)
        {
            model.Cp.AddBoolAnd(needed).OnlyEnforceIf(taken);
        }

        return taken;
    }

    private static void RequireCover(PurchaseModel model, PossibleViews views, PossibleJump[] jumps, ILiteral[] taken)
    {
        var enough = model.Problem.EnoughMismatch + (Tolerance.Value / 2);
        Reach[] stretches =
        [
            .. views.All.Select(view => new Reach(view.Reach.From - enough, view.Reach.To + enough)),
            .. jumps.Select(jump => jump.Unserved(enough - Tolerance.Value)),
        ];
        var count = views.All.Length;
        foreach (var place in Cover.Places(stretches, index => index < count && views.All[index].IsCertain, views.Telescope.Axis.Length))
        {
            model.Cp.AddBoolOr(place.Select(index => index < count ? model.Exists(views.All[index]) : taken[index - count]));
        }
    }
}
