using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Tests.Search;

public class LongAxisTests
{
    private const long ManyNodes = 1000;

    [Fact]
    public void A_zoom_that_reaches_the_whole_of_a_long_axis_is_planned_for_where_no_step_is_enough()
    {
        var zoom = Some.Zoom(5, 50);
        var problem = Some.Problem(Some.InUse(Some.Telescope(40, 1000), lowest: 20, highest: 200), catalogue: [zoom]) with
        {
            Preferences = new Preferences { EnoughStep = 1, AvoidZooms = false },
        };
        Assert.Equal(zoom, Assert.Single(SearchEngine.Solve(problem, ManyNodes, new WorkBudget(60)).Plan!.Purchases));
        Assert.Equal(zoom, Assert.Single(Planner.Solve(problem, new WorkBudget(1)).Purchases));
    }
}
