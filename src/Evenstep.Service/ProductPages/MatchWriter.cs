using System.Buffers;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Catalogues;
using Evenstep.Service.Door;
using Evenstep.Service.Kits;
using Evenstep.Service.Pictures;
using Evenstep.Service.Recommendations;
using Evenstep.Service.Wording;

namespace Evenstep.Service.ProductPages;

/// <summary>Writes what an item does as the answer of its page.</summary>
internal static class MatchWriter
{
    public static MatchAnswer Write(RecommendationAsked asked, Item item)
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
            Fills = match.Filling is { } filling ? KitWriter.StepOf(filling.Jump, asked.Problem.EnoughMismatch) : null,
            Before = KitWriter.FiguresOf(match.Before.Figures),
            After = KitWriter.FiguresOf(match.After.Figures),
            Cautions = KitRemarks.CautionsOf(match.After),
        };
    }

    /// <summary>The same in the form and the language asked for.</summary>
    public static ReadOnlySequence<byte> Write(RecommendationAsked asked, Item item, Manner manner) => manner.Form == AnswerForm.Picture
        ? new ReadOnlySequence<byte>(LadderPicture.Draw(MatchScene.Of(asked, item), manner.Language))
        : AnswerBytes.Of(Write(asked, item), AnswerJson.In(manner.Language).MatchAnswer);

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
