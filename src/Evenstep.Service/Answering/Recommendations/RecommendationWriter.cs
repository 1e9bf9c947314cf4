using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>Writes a plan as the answer to a request.</summary>
internal static class RecommendationWriter
{
    /// <param name="asked">The request.</param>
    /// <param name="solved">What came of it.</param>
    /// <param name="budget">Counts the work; null for nobody who could cancel.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static RecommendationAnswer Write(RecommendationAsked asked, Solved solved, WorkBudget? budget = null)
    {
        var after = solved.Plan.Outcome == Outcome.Infeasible ? null : Kit.Of(asked.Problem, solved.Plan.Purchases);
        return Write(asked, solved, after, after is null ? [] : Explanation.Of(after, solved.Plan, budget), budget);
    }

    private static RecommendationAnswer Write(
        RecommendationAsked asked, Solved solved, Kit? after, ImmutableArray<ExplainedPurchase> advice, WorkBudget? budget)
    {
        var plan = solved.Plan;
        var before = Kit.Of(asked.Problem, []);
        var kit = after ?? before;
        return new RecommendationAnswer
        {
            Outcome = plan.Outcome,
            Catalogue = KitWriter.CatalogueOf(asked.Catalogue),
            Currency = asked.Catalogue.Currency,
            TotalPrice = after is null ? null : Rounded.Money(after.TotalPrice),
            Purchases = [.. advice.Select(purchase => PurchaseOf(purchase, asked, solved))],
            Spare = after is null ? [] : KitWriter.SpareOf(after, plan.Candidacy.Telescopes, budget),
            SpareTogether = after is null ? [] : KitWriter.SpareTogetherOf(after, plan.Candidacy.Telescopes, budget),
            HoldsWhile = HoldsWhileWriter.Write(solved.HoldsWhile),
            Before = KitWriter.FiguresOf(before.Figures),
            After = after is null ? null : KitWriter.FiguresOf(after.Figures),
            LeastLargestStep = Step(plan.Values?.LeastLargestStep),
            Telescopes = [.. before.Ladders.Select((ladder, i) => TelescopeOf(ladder, after?.Ladders[i], asked))],
            Demands = KitWriter.FramingsOf(kit),
            Notes = [.. PlanRemarks.NotesOf(asked, solved, kit, budget)],
            Excluded = ExclusionWriter.Write(asked, plan.Candidacy),
            Conflicts = plan.Conflicts is null ? null : ConflictWriter.Write(asked, plan.Conflicts),
            Cautions = KitRemarks.CautionsOf(kit),
            Solver = new SolverAnswer
            {
                Proved = plan.IsProved,
                Bound = Step(plan.Values?.Bound),
                Certified = solved.Certified,
                Limit = plan.Limit,
                Milliseconds = Rounded.Milliseconds(solved.Took),
            },
        };
    }

    private static double? Step(Step? step) => step is { } value ? Rounded.Ratio(value.Ratio) : null;

    private static PurchaseAnswer PurchaseOf(ExplainedPurchase purchase, RecommendationAsked asked, Solved solved)
    {
        var listed = asked.Catalogue.Listed[purchase.Item.Id];
        return new PurchaseAnswer
        {
            ItemId = purchase.Item.Id,
            Name = purchase.Item.Name,
            Kind = listed.Kind ?? ItemKind.Eyepiece,
            Price = Rounded.Money(purchase.Item.Price),
            Order = purchase.Order,
            LargestStepWithoutIt = KitWriter.LargestStepOf(purchase.WithoutIt),
            Reasons = [.. purchase.Reasons.Select(reason => ReasonWriter.Write(reason, asked.Problem))],
            IfUnavailable = AlternativeWriter.Write(purchase.Item, solved),
            Line = listed.Line,
            Url = listed.Url,
            Sku = listed.Sku,
            Gtin = listed.Gtin,
            Attributes = listed.Attributes,
        };
    }

    private static EquippedTelescopeAnswer TelescopeOf(Ladder before, Ladder? after, RecommendationAsked asked) => new()
    {
        Name = before.Telescope.Telescope.Name,
        PowerRange = KitWriter.RangeOf(before.Telescope),
        Resolution = KitWriter.ResolutionOf(before.Telescope),
        Before = KitWriter.LadderOf(before, asked.Problem.EnoughStep, asked.Targets),
        After = after is null ? null : KitWriter.LadderOf(after, asked.Problem.EnoughStep, asked.Targets),
    };
}
