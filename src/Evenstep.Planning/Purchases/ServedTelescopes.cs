using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>Which telescopes decide: one in which owned items and candidates together can make no usable view stands aside, unless
/// all do, for no purchase changes anything in it.</summary>
internal static class ServedTelescopes
{
    private const long StepsOfView = 60;

    /// <summary>By their indices, ascending.</summary>
    /// <param name="problem">Whose telescopes.</param>
    /// <param name="candidates">What may be bought.</param>
    /// <param name="steps">Counts the work, or null.</param>
    public static ImmutableArray<int> Of(PurchaseProblem problem, ImmutableArray<Item> candidates, StepCounter? steps = null)
    {
        (Barlow Barlow, double Factor)[] amplified =
        [
            .. problem.Owned.Concat(candidates).Select(item => item.Optic).OfType<Barlow>()
                .SelectMany(barlow => barlow.Factors.Select(factor => (barlow, factor))).DistinctBy(one => (one.barlow.Barrel, one.factor)),
        ];
        ImmutableArray<int> all = [.. Enumerable.Range(0, problem.Telescopes.Length)];
        var served = all.RemoveAll(t => !IsServed(problem.Telescopes[t]));
        return served.IsEmpty ? all : served;

        bool IsServed(TelescopeInUse telescope) =>
            problem.Owned.Any(item => IsUsable(telescope, item, bought: false)) || candidates.Any(item => IsUsable(telescope, item, bought: true));

        bool IsUsable(TelescopeInUse telescope, Item item, bool bought)
        {
            if (item.Ocular is not { } ocular || item.IsReticle || !ocular.Barrel.FitsInto(telescope.Telescope.FocuserBarrel))
            {
                return false;
            }

            steps?.Count(StepsOfView * (1 + amplified.Length));
            return KitViews.IsUsable(problem, View.Of(telescope, ocular), bought)
                || amplified.Any(one => KitViews.IsUsable(problem, View.Of(telescope, ocular, one.Barlow, one.Factor), bought));
        }
    }
}
