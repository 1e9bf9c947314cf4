using System.Collections.Immutable;
using System.Text.Json;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Features.SecondOpinions;

/// <summary>A request for a second opinion, understood.</summary>
internal sealed record SecondOpinionAsked
{
    /// <summary>What the advice is asked for.</summary>
    public required RecommendationAsked Planning { get; init; }

    public required ImmutableArray<Item> ShoppingList { get; init; }
}

/// <summary>Understands a request for a second opinion, or says all that is wrong with it.</summary>
internal static class SecondOpinionReader
{
    /// <summary>The request understood; null with the faults filled.</summary>
    public static SecondOpinionAsked? Read(JsonElement body, CatalogueSnapshot snapshot, Faults faults)
    {
        if (FieldTable<SecondOpinionRequest>.Whole.Read(body, RequestPointer.Root, faults) is not { } request)
        {
            return null;
        }

        var ids = request.ShoppingList ?? [];
        var planning = RecommendationReader.Read(request.Planning, body, snapshot, faults, out var catalogue);
        CatalogueReader.ReportUnknown(ids, catalogue, RequestPointer.Root.To(nameof(SecondOpinionRequest.ShoppingList)), faults);
        return planning is null || faults.Any ? null : new SecondOpinionAsked
        {
            Planning = planning,
            ShoppingList = [.. ids.Select(id => planning.Catalogue.Items[id!])],
        };
    }
}
