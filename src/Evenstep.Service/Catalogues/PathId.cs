namespace Evenstep.Service.Catalogues;

/// <summary>Ids as parts of an address.</summary>
internal static class PathId
{
    private const string EscapedSlash = "%2F";

    /// <summary>The id that is meant. In an address a slash stays in its escaped form, and only the ids there are tell whether it is one.</summary>
    /// <param name="part">The part of the address.</param>
    /// <param name="known">What there is, by id.</param>
    public static string Meant<T>(string part, IReadOnlyDictionary<string, T>? known) =>
        known is null || known.ContainsKey(part) || !part.Contains(EscapedSlash, StringComparison.OrdinalIgnoreCase) ? part
        : known.Keys.FirstOrDefault(
            id => id.Replace("/", EscapedSlash, StringComparison.Ordinal)
                .Equals(part.Replace("%2f", EscapedSlash, StringComparison.Ordinal), StringComparison.Ordinal))
            ?? part.Replace(EscapedSlash, "/", StringComparison.OrdinalIgnoreCase);
}
