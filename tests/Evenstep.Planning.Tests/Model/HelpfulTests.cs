using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model;

namespace Evenstep.Planning.Tests.Model;

/// <summary>What may help to meet a demand is never left out of a diagnosis.</summary>
public class HelpfulTests
{
    /// <summary>Alone the zoom has 64x, the lowest admitted, at 15.6 mm; through the Barlow at 23.4 mm, where its apparent field
    /// is wider.</summary>
    [Fact]
    public void A_Barlow_helps_a_zoom_to_frame_what_it_does_not_alone()
    {
        var zoom = Some.Zoom(8, 24, fieldAtShortestDeg: 40, fieldAtLongestDeg: 60, price: 100);
        var problem = Some.Problem(Some.InUse(lowest: 80, highest: 200), catalogue: [zoom, Some.Barlow(1.5, price: 50)]);
        problem = problem with
        {
            Limits = problem.Limits with { Budget = 120 },
            Preferences = problem.Preferences with { AvoidZooms = false },
            Demands = new Demands { MustFrame = [new FramingDemand("a wide thing", 0.85)] },
        };

        var plan = ModelEngine.Solve(problem, new WorkBudget(WorkLimits.Usual));
        Assert.Equal(Outcome.Infeasible, plan.Outcome);
        Assert.Equal(150, plan.Conflicts!.Nearest.Budget.Value);
        Assert.Equal(0.77, plan.Conflicts.Nearest.WidthDeg.Single().Value);
    }
}
