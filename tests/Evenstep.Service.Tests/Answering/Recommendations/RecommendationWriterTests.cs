using System.Collections.Immutable;
using System.Text.Json;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;
using Reading = Evenstep.Service.Tests.Answers.Reading;
using Recommendation = Evenstep.Service.Tests.Answers.Recommendation;

namespace Evenstep.Service.Tests.Answering.Recommendations;

public sealed class RecommendationWriterTests
{
    private static readonly RecommendationAsked Asked = Read("recommendation-own-catalogue");

    [Fact]
    public void An_interval_that_was_not_decided_is_named()
    {
        var holds = new HoldsWhile(new HeldInterval(1, 2, 1, null, null), null, null);
        var solved = new Solved(PlanOf(Asked, "a-12", "a-25"), TimeSpan.Zero) { HoldsWhile = holds };

        var note = Assert.Single(
            PlanRemarks.NotesOf(Asked, solved, Kit.Of(Asked.Problem, solved.Plan.Purchases)), note => note.Code == "holds-while-not-decided");

        Assert.EndsWith("otherwise: the pupil and the budget.", note.Text.In(Language.English), StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_is_written_with_its_reasons_and_figures()
    {
        var answer = Write(Asked, PlanOf(Asked, "a-12", "a-25"));

        Assert.Equal("optimal", answer.Outcome);
        Assert.Equal("74.00", Reading.Text(answer.TotalPrice));
        Assert.Equal(2, answer.Purchases.Count);
        Assert.NotEqual("", answer.Purchases[0].Reasons[0].Text);
        Assert.Null(answer.Before.LargestStep);
        Assert.Equal(1.5, answer.LeastLargestStep);
        Assert.Equal(2.5, answer.Solver.Milliseconds);
    }

    [Fact]
    public void An_infeasible_plan_is_written_with_what_would_help()
    {
        var missing = Asked.Problem.Catalogue.First(item => item.Id == "z-8-24");
        var plan = new Plan
        {
            Outcome = Outcome.Infeasible,
            Purchases = [],
            Candidacy = Candidacy.Of(Asked.Problem),
            Conflicts = new Conflicts(
                [new Exclusion(missing, Excluded.OverBudget)],
                [new Demand.Reticle(200), new Demand.MustInclude(missing), new Demand.MustFrame(new FramingDemand(null, 2), 0)],
                true,
                new NearestLimits(186m, Nearest.None<int>(), Nearest.None<int>(), Nearest.None<int>(), [])),
        };

        var answer = Write(Asked, plan);

        Assert.Null(answer.TotalPrice);
        Assert.Null(answer.Telescopes[0].After);
        Assert.Equal("186.00", Reading.Text(answer.Conflicts!.Nearest.Budget));
        Assert.Equal(
            ["over-budget", "reticle", "must-include", "must-frame"],
            answer.Conflicts.Demands.Select(one => one.Code));
        Assert.Contains(answer.Notes, note => note.Code == "larger-budget-helps" && note.Text.Contains("EUR 186.00", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_exclusion_of_the_demo_catalogue_is_explained()
    {
        var asked = Read("recommendation-spectacles");

        var answer = Write(asked, PlanOf(asked));

        Assert.All(answer.ListOfExcluded(), one => Assert.NotEqual("", one.Detail));
        Assert.True(answer.ListOfExcluded().Count > 20);
    }

    private static RecommendationAsked Read(string example)
    {
        using var document = JsonDocument.Parse(Repository.Example(example));
        var faults = new Faults();
        var asked = RecommendationReader.Read(document.RootElement, CatalogueSnapshot.WithDemo(), faults);
        Assert.Empty(faults.Shown);
        return asked!;
    }

    private static Plan PlanOf(RecommendationAsked asked, params string[] ids) => new()
    {
        Outcome = ids.Length == 0 ? Outcome.NothingWorthwhile : Outcome.Optimal,
        Purchases = [.. asked.Problem.Catalogue.Where(item => ids.Contains(item.Id))],
        Candidacy = Candidacy.Of(asked.Problem),
        Values = new StageValues(Step.Of(1.5), Step.Of(1.5), 0, 0, 0),
    };

    private static Recommendation Write(RecommendationAsked asked, Plan plan)
    {
        var answer = RecommendationWriter.Write(asked, new Solved(plan, TimeSpan.FromMilliseconds(2.5)));
        return Reading.Read<Recommendation>(JsonSerializer.Serialize(answer, RecommendationJson.In(Language.English).RecommendationAnswer));
    }
}
