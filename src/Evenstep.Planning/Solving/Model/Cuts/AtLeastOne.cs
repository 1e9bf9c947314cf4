using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model.Cuts;

/// <summary>Some of these choices is bought.</summary>
internal sealed class AtLeastOne(int[] places) : Cut
{
    public override int Terms => places.Length;

    /// <summary>Nothing could do it.</summary>
    public bool IsOutOfReach => places.Length == 0;

    public override bool Allows(ReadOnlySpan<int> chosen) => places.AsSpan().IndexOfAny(chosen) >= 0;

    public override void Keep(Master master) => master.Cp.AddBoolOr(places.Select(master.Chosen));
}
