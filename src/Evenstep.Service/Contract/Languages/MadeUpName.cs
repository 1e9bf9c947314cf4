using System.Globalization;

namespace Evenstep.Service.Contract.Languages;

/// <summary>
/// What is called by its place because it was given no name. In answers such a name is the same in every language, for the
/// request may refer to it; in a sentence that of a telescope is put into the reader's words, and an item is called by what it is.
/// </summary>
internal static class MadeUpName
{
    private const string Telescope = "telescope ";
    private const string Owned = "owned-";

    public static string OfTelescope(int place) => string.Create(CultureInfo.InvariantCulture, $"{Telescope}{place}");

    /// <summary>The id of an owned item.</summary>
    public static string OfOwned(int place) => string.Create(CultureInfo.InvariantCulture, $"{Owned}{place}");

    /// <summary>The place that such a name was made of; null for any other name.</summary>
    public static int? PlaceOfTelescope(string name) =>
        name.StartsWith(Telescope, StringComparison.Ordinal)
        && int.TryParse(name.AsSpan(Telescope.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var place)
            ? place : null;
}
