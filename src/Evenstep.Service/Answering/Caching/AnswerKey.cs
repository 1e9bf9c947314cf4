using System.Security.Cryptography;
using System.Text;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Http.Negotiation;

namespace Evenstep.Service.Answering.Caching;

/// <summary>Names an answer by all that decides it, so that it can be looked up before the body is parsed.</summary>
internal static class AnswerKey
{
    /// <summary>
    /// The key of the answer to a body. Of the snapshot only the catalogue that the body names counts, so that a change to any
    /// other makes no answer new. Its owner counts too: whatever two owners' catalogues have in common, neither is given an
    /// answer that was made for the other.
    /// </summary>
    public static string Of(string route, Representation representation, CatalogueSnapshot snapshot, ReadOnlySpan<byte> body)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var id = NamedCatalogue.Of(body);
        var (owner, version) = id is null ? (null, null) : (snapshot.OwnerOf(id).Name, snapshot.Find(id)?.Version);
        foreach (var part in new[] { route, representation.Form.MediaType, representation.Language.Tag, owner ?? "", version ?? "" })
        {
            // None of them holds a null character, so that no two lists of parts are alike.
            hash.AppendData(Encoding.UTF8.GetBytes(part));
            hash.AppendData([0]);
        }

        hash.AppendData(body);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
