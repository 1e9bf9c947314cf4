using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>Keeps <see cref="MustIncludeRule"/>; a Barlow that must be included is in every set that is settled.</summary>
internal static class MustInclude
{
    public static void Keep(Master master)
    {
        for (var index = 0; index < master.Settled.Choices.Length; index++)
        {
            if (master.Settled.Choices[index].IsDemanded)
            {
                master.Cp.AddBoolAnd([master.Chosen(index)]);
            }
        }
    }
}
