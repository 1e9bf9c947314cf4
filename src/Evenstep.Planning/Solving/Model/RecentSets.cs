using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model;

/// <summary>The sets found last: what was wrong with them begins the next master.</summary>
internal sealed class RecentSets
{
    private const int Most = 24;

    private readonly LinkedList<int[]> choices = [];

    /// <summary>As indices among what is left with other Barlows; the last first.</summary>
    public IEnumerable<int[]> In(Settled settled)
    {
        if (choices.Count == 0)
        {
            yield break;
        }

        var indexOf = new Dictionary<int, int>(settled.Choices.Length);
        for (var index = 0; index < settled.Choices.Length; index++)
        {
            indexOf[settled.Choices[index].Index] = index;
        }

        foreach (var set in choices)
        {
            int[] indices = [.. set.Where(indexOf.ContainsKey).Select(index => indexOf[index]).Order()];
            if (indices.Length > 0)
            {
                yield return indices;
            }
        }
    }

    public void Add(Judged judged) => Add([.. judged.Indices.Select(index => judged.Settled.Choices[index].Index)]);

    /// <param name="set">By the indices of its choices in the problem.</param>
    public void Add(int[] set)
    {
        if (set.Length == 0)
        {
            return;
        }

        choices.AddFirst(set);
        if (choices.Count > Most)
        {
            choices.RemoveLast();
        }
    }
}
