using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>Every item that must be included is bought: a Barlow is in every set that is settled.</summary>
internal static class MustInclude
{
    public static void Keep(Master master)
    {
        for (var place = 0; place < master.Settled.Choices.Length; place++)
        {
            if (master.Settled.Choices[place].IsDemanded)
            {
                master.Cp.AddBoolAnd([master.Chosen(place)]);
            }
        }
    }
}
