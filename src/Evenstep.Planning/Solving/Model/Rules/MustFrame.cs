using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>Keeps <see cref="FramingRule"/>; a wide view that is wished for is such a demand, where it can be had.</summary>
internal static class MustFrame
{
    private const long StepsPerChoice = 20;

    public static void Keep(Master master)
    {
        var settled = master.Settled;
        foreach (var demand in master.Problem.Demands.MustFrame.Concat(settled.Question.Framings))
        {
            if (!settled.CertainlyShows(demand.WidthDeg, demand.TelescopeIndex))
            {
                settled.Space.Budget.Spend(StepsPerChoice * settled.Choices.Length * settled.TelescopeCount);
                master.Cp.AddBoolOr(Enumerable.Range(0, settled.Choices.Length)
                    .Where(index => settled.Shows(index, demand.WidthDeg, demand.TelescopeIndex))
                    .Select(master.Chosen));
            }
        }
    }
}
