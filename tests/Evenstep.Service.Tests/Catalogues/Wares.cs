using System.Globalization;
using System.Text.Json;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Authentication;

namespace Evenstep.Service.Tests.Catalogues;

/// <summary>Small catalogues that are right.</summary>
internal static class Wares
{
    public const string Id = "shop";

    public static readonly CatalogueKey Key = new(Owner.Nobody, Id);

    /// <summary>One eyepiece at a price, and a telescope that is packed with it.</summary>
    public static string Json(
        decimal price = 39.9m,
        string telescopes =
            """[ { "id": "reef-150", "apertureMm": 150, "focalLengthMm": 750, "focuserBarrel": "2in", "included": ["e-25"] } ]""") => string.Create(
        CultureInfo.InvariantCulture,
        $$"""
        { "currency": "EUR", "telescopes": {{telescopes}}, "items": [
          { "id": "e-25", "kind": "eyepiece", "focalLengthMm": 25, "apparentFieldDeg": 52, "eyeReliefMm": 18, "barrel": "1.25in", "price": {{price}} },
          { "id": "e-6", "kind": "eyepiece", "focalLengthMm": 6, "apparentFieldDeg": 60, "eyeReliefMm": 16, "barrel": "1.25in", "price": 79 } ] }
        """);

    /// <summary>Many eyepieces with long attributes: four hundred characters each.</summary>
    public static string Large(int items, int attributes, int firstPrice = 0)
    {
        var texts = string.Join(", ", Enumerable.Range(0, attributes).Select(i => $"\"{$"{i} ".PadRight(200, 'n')}\": \"{new string('t', 200)}\""));
        var lines = Enumerable.Range(0, items).Select(i => string.Create(
            CultureInfo.InvariantCulture,
            $$"""{ "id": "e-{{i}}", "kind": "eyepiece", "focalLengthMm": {{5 + (i % 30)}}, "apparentFieldDeg": 52, "eyeReliefMm": 18, "barrel": "1.25in",""" +
            $$""" "price": {{(i == 0 ? firstPrice : i)}}, "attributes": { {{texts}} } }"""));
        return $$"""{ "currency": "EUR", "items": [ {{string.Join(",\n", lines)}} ] }""";
    }

    public static Catalogue Catalogue(decimal price = 39.9m, string id = Id) => Read(Json(price), id);

    public static Catalogue Read(string json, string id = Id)
    {
        using var document = JsonDocument.Parse(json);
        var faults = new Faults();
        return CatalogueReader.ReadStored(id, document.RootElement, faults) ?? throw new InvalidDataException(string.Join("; ", faults.Shown));
    }
}
