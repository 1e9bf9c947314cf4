using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>Keeps <see cref="OneReticleRule"/>.</summary>
internal static class OneReticle
{
    public static void Keep(Master master) => master.Cp.AddAtMostOne(
        Enumerable.Range(0, master.Settled.Choices.Length)
            .Where(index => master.Settled.Choices[index].Representative.IsReticle)
            .Select(master.Chosen));
}
