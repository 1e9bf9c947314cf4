using System.Security.Cryptography;
using System.Text;
using Evenstep.Service.Door;

namespace Evenstep.Service.Caching;

/// <summary>Names an answer by all that decides it, so that it can be looked up before the body is parsed.</summary>
internal static class AnswerKey
{
    /// <summary>
    /// The key of the answer to a body. Which stored catalogue a body names is only known once it is parsed; the version of
    /// the whole shelf stands in for that catalogue's, at the cost that a change to any of them makes all answers new.
    /// </summary>
    public static string Of(string route, Manner manner, string shelfVersion, ReadOnlySpan<byte> body)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var part in new[] { route, manner.Form.MediaType, manner.Language.Tag, shelfVersion })
        {
            // None of them holds a null character, so that no two lists of parts are alike.
            hash.AppendData(Encoding.UTF8.GetBytes(part));
            hash.AppendData([0]);
        }

        hash.AppendData(body);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
