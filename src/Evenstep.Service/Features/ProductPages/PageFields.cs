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
        Make.ListOf(
            "owned",
            Make.OneLine(ItemRequest.MostIdCharacters),
            0,
            PurchaseProblem.MostOwned,
            "Ids of items of the catalogue that the visitor has, or has in the cart."),
        "owned")
    {
        IsRepeated = true,
        JsonOf = text => new JsonObject { [FieldName.Of(nameof(ItemRequest.Id))] = text },
    };

    private static readonly QueryParameter[] OfVisitor =
    [
        Owned,
        Of<ObserverRequest>(nameof(ObserverRequest.Age), "observer"),
        Of<ObserverRequest>(nameof(ObserverRequest.WearsSpectacles), "observer"),
        Of<ObserverRequest>(nameof(ObserverRequest.LeastEyeReliefMm), "observer"),
        Of<ObserverRequest>(nameof(ObserverRequest.Observes), "observer") with { IsRepeated = true, JsonOf = text => JsonValue.Create(text) },
        Of<SiteRequest>(nameof(SiteRequest.SeeingArcsec), "site"),
        Of<PreferencesRequest>(nameof(PreferencesRequest.EnoughStep), "preferences"),
    ];

    /// <summary>The query of a telescope's page.</summary>
    public static readonly PageQuery OfTelescope = new(
    [
        Of<LimitsRequest>(nameof(LimitsRequest.Budget), "limits"),
        Of<LimitsRequest>(nameof(LimitsRequest.MaxPurchases), "limits"),
        Of<PreferencesRequest>(nameof(PreferencesRequest.Prefer), "preferences"),
        Of<PreferencesRequest>(nameof(PreferencesRequest.Barlows), "preferences"),
        Of<PreferencesRequest>(nameof(PreferencesRequest.Zooms), "preferences"),
        .. OfVisitor,
    ]);

    /// <summary>The query of an item's page: the telescope by its id, or in full.</summary>
    public static readonly PageQuery OfItem = new(
    [
        Of<TelescopeRequest>(nameof(TelescopeRequest.Id), "telescopes", "0") with { Name = "telescope" },
        Of<TelescopeRequest>(nameof(TelescopeRequest.ApertureMm), "telescopes", "0"),
        Of<TelescopeRequest>(nameof(TelescopeRequest.FocalLengthMm), "telescopes", "0"),
        Of<TelescopeRequest>(nameof(TelescopeRequest.FocuserBarrel), "telescopes", "0"),
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

    /// <summary>A field of the body as a parameter, which need not be given.</summary>
    private static QueryParameter Of<T>(string property, params string[] within)
        where T : class, new()
    {
        var field = FieldTable<T>.Of(property).Optional();
        return new QueryParameter(field, [.. within, field.Name]);
    }
}
