using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model;

/// <summary>The sets found last: what was wrong with them begins the next master.</summary>
internal sealed class RecentSets
{
    private const int Most = 24;

    private readonly LinkedList<int[]> choices = [];

    /// <summary>As places among what is left with other Barlows; the last first.</summary>
    public IEnumerable<int[]> In(Settled settled)
    {
        if (choices.Count == 0)
        {
            yield break;
        }

        var placeOf = new Dictionary<int, int>(settled.Choices.Length);
        for (var place = 0; place < settled.Choices.Length; place++)
        {
            placeOf[settled.Choices[place].Index] = place;
        }

        foreach (var set in choices)
        {
            int[] places = [.. set.Where(placeOf.ContainsKey).Select(index => placeOf[index]).Order()];
            if (places.Length > 0)
            {
                yield return places;
            }
        }
    }

    public void Add(Judged judged)
    {
        if (judged.Places.Length == 0)
        {
            return;
        }

        choices.AddFirst([.. judged.Places.Select(place => judged.Settled.Choices[place].Index)]);
        if (choices.Count > Most)
        {
            choices.RemoveLast();
        }
    }
}
