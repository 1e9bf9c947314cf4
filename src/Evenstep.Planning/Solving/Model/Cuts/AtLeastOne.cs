using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model.Cuts;

/// <summary>Some of these choices is bought.</summary>
internal sealed class AtLeastOne(int[] indices) : Cut
{
    public override int Terms => indices.Length;

    /// <summary>Nothing could do it.</summary>
    public bool IsOutOfReach => indices.Length == 0;

    public override bool Allows(ReadOnlySpan<int> chosen) => indices.AsSpan().IndexOfAny(chosen) >= 0;

    public override void Keep(Master master) => master.Cp.AddBoolOr(indices.Select(master.Chosen));
}
