using System.Globalization;

namespace Evenstep.Service.Contract.Languages;

/// <summary>
/// What is called by its place because it was given no name. In answers such a name is the same in every language, for the
/// request may refer to it; in a sentence it is put into the reader's words.
/// </summary>
internal static class MadeUpName
{
    private const string Telescope = "telescope ";
    private const string Owned = "owned-";

    public static string OfTelescope(int place) => string.Create(CultureInfo.InvariantCulture, $"{Telescope}{place}");

    /// <summary>The id of an owned item.</summary>
    public static string OfOwned(int place) => string.Create(CultureInfo.InvariantCulture, $"{Owned}{place}");

    /// <summary>The place that such a name was made of; null for any other name.</summary>
    public static int? PlaceOfTelescope(string name) => PlaceAfter(Telescope, name);

    public static int? PlaceOfOwned(string name) => PlaceAfter(Owned, name);

    private static int? PlaceAfter(string beginning, string name) =>
        name.StartsWith(beginning, StringComparison.Ordinal)
        && int.TryParse(name.AsSpan(beginning.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var place)
            ? place : null;
}
