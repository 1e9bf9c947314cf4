using System.Buffers;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Pictures;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Http.Negotiation;

namespace Evenstep.Service.Features.ProductPages;

/// <summary>Writes what an item does as the answer of its page.</summary>
internal static class MatchWriter
{
    public static MatchAnswer Write(RecommendationAsked asked, Item item, RemarkAnswer? ignored = null)
    {
        var match = ItemMatch.Of(asked.Problem, item);
        return new MatchAnswer
        {
            Catalogue = KitWriter.CatalogueOf(asked.Catalogue) with { Version = null },
            Currency = asked.Catalogue.Currency,
            Item = ItemOf(asked.Catalogue.Listed[item.Id], item),
            Telescope = TelescopeOf(match.Before.Ladders.Single()),
            Verdict = VerdictWriter.Write(match, item, asked),
            Views = [.. match.Views.Select(KitWriter.ViewOf)],
            Repeats = [.. match.Repetitions.Select(KitWriter.OverlapOf)],
            Fills = match.Filling is { } filling ? KitWriter.StepOf(filling.Jump, asked.Problem.EnoughStep) : null,
            Before = KitWriter.FiguresOf(match.Before.Figures),
            After = KitWriter.FiguresOf(match.After.Figures),
            Notes =
            [
                .. KitRemarks.AssumedOf(match.After), .. KitRemarks.NotesOfPurchases(match.After), .. ignored is null ? (RemarkAnswer[])[] : [ignored],
            ],
            Cautions = KitRemarks.CautionsOfPurchases(match.After),
        };
    }

    /// <summary>What an item does, in the form and the language asked for.</summary>
    public static ReadOnlySequence<byte> Write(RecommendationAsked asked, Item item, RemarkAnswer? ignored, Representation representation) =>
        representation.Form == AnswerFormat.Picture
        ? new ReadOnlySequence<byte>(LadderPicture.Draw(MatchScene.Of(asked, item), representation.Language))
        : AnswerBytes.Of(Write(asked, item, ignored), MatchJson.In(representation.Language).MatchAnswer);

    private static MatchedItemAnswer ItemOf(ItemRequest listed, Item item) => new()
    {
        ItemId = item.Id,
        Name = item.Name,
        Kind = listed.Kind ?? ItemKind.Eyepiece,
        Price = Rounded.Money(item.Price),
        InStock = item.InStock,
    };

    private static MatchedTelescopeAnswer TelescopeOf(Ladder ladder) => new()
    {
        Name = ladder.Telescope.Telescope.Name,
        PowerRange = KitWriter.RangeOf(ladder.Telescope),
        Resolution = KitWriter.ResolutionOf(ladder.Telescope),
    };
}
