using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Answering.Spending;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.BuyingPaths;

/// <summary>Writes a buying path as the answer to a request.</summary>
internal static class BuyingPathWriter
{
    public static BuyingPathAnswer Write(RecommendationAsked asked, SolvedPath led, WorkBudget budget)
    {
        var path = led.Path;
        var conflicts = path.Plan.Conflicts;
        var end = Kit.Of(asked.Problem, path.Steps.Select(step => step.Item));
        return new BuyingPathAnswer
        {
            Outcome = OutcomeOf(path),
            Catalogue = KitWriter.CatalogueOf(asked.Catalogue),
            Currency = asked.Catalogue.Currency,
            TotalPrice = conflicts is null ? Rounded.Money(end.TotalPrice) : null,
            Before = KitWriter.FiguresOf(Kit.Of(asked.Problem, []).Figures),
            Steps = [.. path.Steps.Select((step, place) => StepOf(step, path, Kit.Of(asked.Problem, path.Steps.Take(place + 1).Select(one => one.Item))))],
            GreatestLossPercent = conflicts is null ? Rounded.Percent(100 * path.GreatestLoss) : null,
            LeastGreatestLossPercent = path.LeastGreatestLoss is { } least ? Rounded.Percent(100 * least) : null,
            ComparedWith = SpendingCurveWriter.PointsOf(asked.Problem, SpendingCurve.Of(path.Frontier), path.Plan.Candidacy.Telescopes),
            Notes = [.. NotesOf(asked, led, end, budget)],
            Conflicts = conflicts is null ? null : ConflictWriter.Write(asked, conflicts),
            Cautions = KitRemarks.CautionsOf(end),
            Solver = new PathSolverAnswer { Proved = path.IsProved, Limit = path.Limit, Milliseconds = Rounded.Milliseconds(led.Took) },
        };
    }

    private static Outcome OutcomeOf(BuyingPath path) =>
        path.Plan.Outcome == Outcome.Infeasible ? Outcome.Infeasible
        : !path.IsProved ? Outcome.BestFound
        : path.Steps.IsEmpty ? Outcome.NothingWorthwhile : Outcome.Optimal;

    private static BuyingStepAnswer StepOf(BuyingStep step, BuyingPath path, Kit kit) => new()
    {
        ItemId = step.Item.Id,
        Name = step.Item.Name,
        Price = Rounded.Money(step.Item.Price),
        TotalPriceSoFar = Rounded.Money(step.TotalPriceSoFar),
        After = KitWriter.FiguresOf(kit.Figures),
        LossPercent = Rounded.Percent(100 * step.Loss),
        BestForTheMoney = path.Frontier.PointFor(step.TotalPriceSoFar) is { } point
            ? KitWriter.LargestStepOf(Kit.Of(kit.Problem, point.Purchases).FiguresIn(path.Plan.Candidacy.Telescopes))
            : null,
    };

    private static IEnumerable<RemarkAnswer> NotesOf(RecommendationAsked asked, SolvedPath led, Kit end, WorkBudget budget)
    {
        // What is remarked on a plan is remarked on where the path ends, which may be another set.
        var path = led.Path;
        var ended = path.Plan with { Purchases = [.. end.Purchases.OrderBy(item => item.Id, StringComparer.Ordinal)] };
        foreach (var note in PlanRemarks.NotesOf(asked, new Solved(ended, led.Took), Kit.Of(asked.Problem, ended.Purchases), budget))
        {
            yield return note;
        }

        if (SpendingRemarks.Unproved(path.Frontier, asked.Catalogue.Currency) is { } unproved && path.Plan.Conflicts is null)
        {
            yield return unproved;
        }
        else if (!path.Steps.IsEmpty)
        {
            yield return NoRegret(path.GreatestLoss);
        }

        if (!path.IsProved)
        {
            yield return Phrase.Of("note", new Remark("path-not-proved", []));
        }
    }

    private static RemarkAnswer NoRegret(double greatestLoss)
    {
        var percent = Rounded.Percent(100 * greatestLoss);
        RemarkValue[] values = [RemarkValue.Percent("greatestLossPercent", percent), RemarkValue.Ratio("timesAsLarge", 1 + greatestLoss)];
        return Phrase.Of("note", new Remark("no-regret", [.. values]), percent > 0 ? null : "none");
    }
}
