using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>
/// If a reticle eyepiece is asked for, the kit has one that fits a telescope and gives, alone or with a Barlow of the kit,
/// at least the power asked.
/// </summary>
internal static class ReticleDemand
{
    public static void Keep(Master master)
    {
        if (master.Problem.Demands.ReticleLeastPower is not { } asked)
        {
            return;
        }

        var settled = master.Settled;
        Item[] barlows =
        [
            .. master.Problem.Owned.Where(item => item.IsBarlow),
            .. settled.Barlows.Select(barlow => barlow.Representative),
        ];
        if (!master.Problem.Owned.Any(item => item.IsReticle && Serves(master.Problem, item, barlows, asked)))
        {
            master.Cp.AddBoolOr(Enumerable.Range(0, settled.Choices.Length)
                .Where(place => settled.Choices[place].Representative is { IsReticle: true } reticle && Serves(master.Problem, reticle, barlows, asked))
                .Select(master.Chosen));
        }
    }

    public static bool Serves(PurchaseProblem problem, Item reticle, Item[] barlows, double asked) =>
        Reticle.HighestPower(reticle, barlows, problem.Telescopes) is { } power && Tolerance.AtLeast(power / asked, 1);
}
