using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Storing;

/// <summary>Finds the catalogue that a request names, or reads the one that it brings.</summary>
internal static class CatalogueReference
{
    /// <summary>The catalogue of a request; null where it is missing, faulty or unknown.</summary>
    public static Catalogue? Read(CatalogueRequest? request, CatalogueSnapshot snapshot, Faults faults)
    {
        var pointer = RequestPointer.Root.At("catalogue");
        if (request?.Id is not { } id)
        {
            return request?.Items is null ? null : CatalogueReader.ReadWhole(request, pointer, faults);
        }

        if (snapshot.Find(id) is { } stored)
        {
            return stored;
        }

        faults.Add(pointer.At("id"), FaultCode.UnknownCatalogue, () => ErrorMessage.Of("error/no-such-catalogue/inline", ("message", snapshot.NoSuch(id))));
        return null;
    }
}
