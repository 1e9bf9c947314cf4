using System.Collections.Immutable;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Features.Choices;

/// <summary>Writes choices as the answer to a request.</summary>
internal static class ChoicesWriter
{
    /// <param name="asked">The request.</param>
    /// <param name="solved">What came of it.</param>
    /// <param name="outcome">How the planning of all of them ended.</param>
    /// <param name="budget">Counts the work.</param>
    /// <exception cref="OperationCanceledException">Somebody has cancelled.</exception>
    public static ChoicesAnswer Write(RecommendationAsked asked, SolvedChoices solved, Outcome outcome, WorkBudget budget)
    {
        var (choices, comfort) = (solved.Found.All, solved.Found.Comfort);
        var before = Kit.Of(asked.Problem, []);
        return new ChoicesAnswer
        {
            Outcome = outcome,
            Catalogue = KitWriter.CatalogueOf(asked.Catalogue),
            Currency = asked.Catalogue.Currency,
            Choices = [.. choices.Select(choice => ChoiceOf(choice, asked, budget))],
            Before = KitWriter.FiguresOf(before.Figures),
            Telescopes = [.. before.Ladders.Select((ladder, index) => TelescopeOf(ladder, index, choices, asked))],
            Notes = [.. ChoicesRemarks.NotesOf(asked, solved, before, budget)],
            Conflicts = comfort.Conflicts is null ? null : ConflictWriter.Write(asked, comfort.Conflicts),
            Cautions = ChoicesRemarks.CautionsOf(solved, before),
            Solver = new ChoicesSolverAnswer
            {
                Proved = outcome != Outcome.BestFound,
                Limit = comfort.Limit ?? choices.Select(choice => choice.Plan.Limit).FirstOrDefault(limit => limit is not null),
                Milliseconds = Rounded.Milliseconds(solved.Took),
            },
        };
    }

    private static ChoiceAnswer ChoiceOf(Choice choice, RecommendationAsked asked, WorkBudget budget) => new()
    {
        Codes = choice.Codes,
        Outcome = choice.Plan.Outcome,
        TotalPrice = Rounded.Money(choice.Kit.TotalPrice),
        Purchases = [.. BuyingOrder.Of(choice.Kit, choice.Plan.Candidacy.Telescopes, budget).Select((item, index) => ItemOf(item, index + 1, asked.Catalogue))],
        After = KitWriter.FiguresOf(choice.Kit.Figures),
        Differences = [.. choice.Differences.Select(difference => ChoicesRemarks.DifferenceOf(difference, asked.Catalogue.Currency))],
    };

    private static ChosenItemAnswer ItemOf(Item item, int order, Catalogue catalogue)
    {
        var listed = catalogue.Listed[item.Id];
        return new ChosenItemAnswer
        {
            ItemId = item.Id,
            Name = item.Name,
            Kind = listed.Kind ?? ItemKind.Eyepiece,
            Price = Rounded.Money(item.Price),
            Order = order,
            Line = listed.Line,
            Url = listed.Url,
            Sku = listed.Sku,
            Gtin = listed.Gtin,
            Attributes = listed.Attributes,
        };
    }

    private static ChoicesInTelescopeAnswer TelescopeOf(Ladder before, int index, ImmutableArray<Choice> choices, RecommendationAsked asked) => new()
    {
        Name = before.Telescope.Telescope.Name,
        PowerRange = KitWriter.RangeOf(before.Telescope),
        Resolution = KitWriter.ResolutionOf(before.Telescope),
        Before = LadderOf(before, asked),
        Choices = [.. choices.Select(choice => new LadderOfChoiceAnswer { Codes = choice.Codes, Ladder = LadderOf(choice.Kit.Ladders[index], asked) })],
    };

    private static LadderAnswer LadderOf(Ladder ladder, RecommendationAsked asked) => KitWriter.LadderOf(ladder, asked.Problem.EnoughStep, asked.Targets);
}
