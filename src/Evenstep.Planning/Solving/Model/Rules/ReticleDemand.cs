using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>Keeps <see cref="ReticleRule"/>.</summary>
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
        if (!ReticleRule.IsServedBy(master.Problem, master.Problem.Owned, barlows, asked))
        {
            master.Cp.AddBoolOr(Enumerable.Range(0, settled.Choices.Length)
                .Where(index => settled.Choices[index].Representative is { IsReticle: true } reticle
                    && ReticleRule.Serves(master.Problem, reticle, barlows, asked))
                .Select(master.Chosen));
        }
    }
}
