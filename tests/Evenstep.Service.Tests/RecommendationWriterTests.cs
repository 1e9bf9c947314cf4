using System.Collections.Immutable;
using System.Text.Json;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Tests;

public sealed class RecommendationWriterTests
{
    private static readonly RecommendationAsked Asked = Read("recommendation-own-catalogue");

    [Fact]
    public void A_plan_is_written_with_its_reasons_and_figures()
    {
        var answer = Write(Asked, PlanOf(Asked, "a-12", "a-25"));

        Assert.Equal("optimal", answer.GetProperty("outcome").GetString());
        Assert.Equal("74.00", answer.GetProperty("totalPrice").GetRawText());
        Assert.Equal(2, answer.GetProperty("purchases").GetArrayLength());
        Assert.NotEqual("", answer.GetProperty("purchases")[0].GetProperty("reasons")[0].GetProperty("text").GetString());
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("before").GetProperty("largestStep").ValueKind);
        Assert.Equal(1.5, answer.GetProperty("leastLargestStep").GetDouble());
        Assert.Equal("2.5", answer.GetProperty("solver").GetProperty("milliseconds").GetRawText());
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

        Assert.Equal(JsonValueKind.Null, answer.GetProperty("totalPrice").ValueKind);
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("telescopes")[0].GetProperty("after").ValueKind);
        Assert.Equal("186.00", answer.GetProperty("conflicts").GetProperty("nearest").GetProperty("budget").GetRawText());
        Assert.Equal(
            ["over-budget", "reticle", "must-include", "must-frame"],
            answer.GetProperty("conflicts").GetProperty("demands").EnumerateArray().Select(one => one.GetProperty("code").GetString()));
        Assert.Contains(answer.GetProperty("notes").EnumerateArray(), note => note.GetProperty("text").GetString() == "A budget of EUR 186.00 alone would make it possible.");
    }

    [Fact]
    public void Every_exclusion_of_the_demo_catalogue_is_explained()
    {
        var asked = Read("recommendation-spectacles");

        var answer = Write(asked, PlanOf(asked));

        Assert.All(answer.GetProperty("excluded").EnumerateArray(), one => Assert.NotEqual("", one.GetProperty("detail").GetString()));
        Assert.True(answer.GetProperty("excluded").GetArrayLength() > 20);
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
        Values = new StageValues(Math.Log(1.5), Math.Log(1.5), 0, 0),
    };

    private static JsonElement Write(RecommendationAsked asked, Plan plan)
    {
        var answer = RecommendationWriter.Write(asked, new Solved(plan, TimeSpan.FromMilliseconds(2.5)));
        return JsonSerializer.SerializeToElement(answer, RecommendationJson.In(Language.English).RecommendationAnswer);
    }
}
