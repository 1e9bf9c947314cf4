using System.Text.Json.Nodes;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Features.ProductPages;

/// <summary>The queries of the product pages, and the bodies that they are put into.</summary>
internal static class PageFields
{
    private static readonly QueryParameter Owned = new(
        Make.ListOf("owned", RecommendationFields.ItemId, 0, PurchaseProblem.MostOwned, "Ids of items of the catalogue that the visitor has, or has in the cart."), "owned")
    {
        IsRepeated = true,
        JsonOf = text => new JsonObject { [ItemFields.Id.Name] = text },
    };

    private static readonly QueryParameter[] OfVisitor =
    [
        Owned,
        new(ObserverFields.Age, "observer", "age"),
        new(ObserverFields.WearsSpectacles, "observer", "wearsSpectacles"),
        new(ObserverFields.LeastEyeReliefMm, "observer", "leastEyeReliefMm"),
        new(ObserverFields.Observes, "observer", "observes") { IsRepeated = true, JsonOf = text => JsonValue.Create(text) },
        new(KitFields.SeeingArcsec, "site", "seeingArcsec"),
        new(KitFields.EnoughStep, "preferences", "enoughStep"),
    ];

    /// <summary>The query of a telescope's page.</summary>
    public static readonly PageQuery OfTelescope = new(
    [
        new(RecommendationFields.Budget, "limits", "budget"),
        new(RecommendationFields.MaxPurchases, "limits", "maxPurchases"),
        new(RecommendationFields.PreferField, "preferences", "prefer"),
        new(RecommendationFields.Barlows, "preferences", "barlows"),
        new(RecommendationFields.Zooms, "preferences", "zooms"),
        .. OfVisitor,
    ]);

    /// <summary>The query of an item's page: the telescope by its id, or in full.</summary>
    public static readonly PageQuery OfItem = new(
    [
        new(TelescopeFields.Id, "telescopes", "0", "id") { Name = "telescope" },
        new(TelescopeFields.ApertureMm, "telescopes", "0", "apertureMm"),
        new(TelescopeFields.FocalLengthMm, "telescopes", "0", "focalLengthMm"),
        new(TelescopeFields.FocuserBarrel, "telescopes", "0", "focuserBarrel"),
        .. OfVisitor,
    ]);

    /// <summary>The body of a telescope's page before its query is put in.</summary>
    public static JsonObject BodyOfTelescope(string catalogueId, string telescopeId) => Body(catalogueId, new JsonObject { ["id"] = telescopeId });

    /// <summary>The body of an item's page before its query is put in. Money is no matter there.</summary>
    public static JsonObject BodyOfItem(string catalogueId)
    {
        var body = Body(catalogueId, []);
        LeaveMoneyAside(body);
        return body;
    }

    public static bool NamesBudget(JsonObject body) => body["limits"]?["budget"] is not null;

    /// <summary>Gives a body the greatest budget there is.</summary>
    public static void LeaveMoneyAside(JsonObject body) => (body["limits"] ??= new JsonObject())["budget"] = Bounds.Budget.Most;

    private static JsonObject Body(string catalogueId, JsonObject telescope) => new()
    {
        ["telescopes"] = new JsonArray(telescope),
        ["catalogue"] = new JsonObject { ["id"] = catalogueId },
    };
}
