using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model.Cuts;

/// <summary>At most one of these choices is bought.</summary>
internal sealed class AtMostOne(int[] indices) : Cut
{
    public override int Terms => indices.Length;

    public override bool Allows(ReadOnlySpan<int> chosen)
    {
        var count = 0;
        foreach (var index in chosen)
        {
            count += Array.IndexOf(indices, index) >= 0 ? 1 : 0;
        }

        return count <= 1;
    }

    public override void Keep(Master master) => master.Cp.AddAtMostOne(indices.Select(master.Chosen));
}
