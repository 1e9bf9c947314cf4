using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Content;

/// <summary>Says that a catalogue has no item of an id.</summary>
internal static class NoSuchItem
{
    /// <param name="id">The id that was given.</param>
    /// <param name="known">The ids that there are; the nearest is named.</param>
    /// <param name="instead">The key of the sentence that says what to do.</param>
    public static ErrorMessage Of(string id, IEnumerable<string> known, string instead) => ErrorMessage.Of(
        "error/no-such-item", ("id", ErrorText.Quoted(id)), ("hint", NearestName.HintOn(id, known)), ("instead", ErrorMessage.Of(instead)));
}
