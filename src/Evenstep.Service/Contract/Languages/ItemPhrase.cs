using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Service.Contract.Languages;

/// <summary>
/// What an item is called in a sentence: by its name; one of the observer's own without a name by what it is; one of the catalogue
/// without a name by its id.
/// </summary>
internal static class ItemPhrase
{
    /// <summary>How an item is written that stands after a preposition such as "with".</summary>
    private const string After = "after";

    /// <param name="item">The item.</param>
    /// <param name="how">As the slot says.</param>
    /// <param name="language">In which it is called so.</param>
    public static string Of(Item item, string how, Language language) => IsMadeUp(item) ? OwnOf(item, how == After).In(language) : NameOf(item);

    /// <summary>In answers: the same in every language.</summary>
    public static string NameOf(Item item) => item.Name ?? item.Id;

    /// <summary>Whether it is called by what it is.</summary>
    public static bool IsMadeUp(Item item) => item is { Name: null, IsOwn: true };

    private static Sentence OwnOf(Item item, bool isAfter)
    {
        var end = isAfter ? $"/{After}" : "";
        return item.Optic switch
        {
            Zoom zoom => new Sentence($"own/zoom{end}", [Figure("shortestMm", zoom.ShortestFocalLengthMm), Figure("longestMm", zoom.LongestFocalLengthMm)]),
            Barlow barlow => new Sentence($"own/barlow{end}", [new RemarkValue("factors", barlow.Factors.ToArray(), 2)]),
            _ => new Sentence($"own/{(item.IsReticle ? "reticle" : "eyepiece")}{end}", [Figure("focalLengthMm", item.Ocular!.LongestFocalLengthMm)]),
        };
    }

    private static RemarkValue Figure(string name, double figure) => RemarkValue.Millimetres(name, figure);
}
