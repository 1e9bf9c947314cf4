using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Storing;

/// <summary>Finds the catalogue that a request names, or reads the one that it brings.</summary>
internal static class CatalogueReference
{
    /// <summary>The catalogue of a request; null where it is missing, faulty or unknown.</summary>
    public static Catalogue? Read(CatalogueRequest? request, Shelf shelf, Faults faults)
    {
        var place = Place.Root.At("catalogue");
        if (request?.Id is not { } id)
        {
            return request?.Items is null ? null : CatalogueReader.ReadWhole(request, place, faults);
        }

        if (shelf.Find(id) is { } stored)
        {
            return stored;
        }

        faults.Add(place.At("id"), FaultCode.UnknownCatalogue, () => $"{shelf.NoSuch(id)} Or give the items inline.");
        return null;
    }
}
