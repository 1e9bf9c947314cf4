using System.Text.Json;
using System.Text.RegularExpressions;

namespace Evenstep.Service.Contract.Languages;

/// <summary>Whether a language file says all that another does, of the same values.</summary>
internal static partial class LanguageCheck
{
    /// <summary>The form that every text which bends with a count must have.</summary>
    private const string Other = "other";

    /// <summary>Forms of a text that bends with a count: the categories of plurals (CLDR), and nought.</summary>
    private static readonly string[] Forms = ["0", "zero", "one", "two", "few", "many", Other];

    /// <summary>What is wrong with a file, each with its name and the key; nothing if it can be spoken.</summary>
    /// <param name="file">The file.</param>
    /// <param name="model">The file of which it is a translation; it may be the file itself.</param>
    public static IEnumerable<string> FaultsOf(LanguageFile file, LanguageFile model)
    {
        var texts = new SortedDictionary<string, JsonElement>(StringComparer.Ordinal);
        var wanted = new SortedDictionary<string, JsonElement>(StringComparer.Ordinal);
        Collect(file.Root, "", texts);
        Collect(model.Root, "", wanted);
        return [
            .. wanted.Keys.Except(texts.Keys).Select(key => $"{file.Name}: `{key}` is missing; {model.Name} has it."),
            .. texts.Keys.Except(wanted.Keys).Select(key => $"{file.Name}: `{key}` is not known; {model.Name} does not have it."),
            .. texts.Where(text => wanted.ContainsKey(text.Key)).SelectMany(text => FaultsOf(file.Name, text.Key, text.Value, model.Name, wanted[text.Key])),
        ];
    }

    private static IEnumerable<string> FaultsOf(string file, string key, JsonElement text, string model, JsonElement wanted)
    {
        if (FormsOf(text).FirstOrDefault(form => form.ValueKind is not JsonValueKind.String) is { ValueKind: not JsonValueKind.Undefined } odd)
        {
            return [$"{file}: `{key}` is {odd.GetRawText()}; it must be a text."];
        }

        var (slots, wantedSlots) = (SlotsOf(text), SlotsOf(wanted));
        return [
            .. wantedSlots.Except(slots).Select(slot => $"{file}: `{key}` does not say {slot}; {model} does."),
            .. slots.Except(wantedSlots).Select(slot => $"{file}: `{key}` says {slot}; {model} does not."),
        ];
    }

    /// <summary>Texts by their full keys; one that bends with a count is one text, however many forms the language has.</summary>
    private static void Collect(JsonElement element, string key, SortedDictionary<string, JsonElement> texts)
    {
        if (element.ValueKind is not JsonValueKind.Object || Bends(element))
        {
            texts.Add(key, element);
            return;
        }

        foreach (var one in element.EnumerateObject().Where(one => one.Name != LanguageFile.About))
        {
            Collect(one.Value, key.Length == 0 ? one.Name : $"{key}/{one.Name}", texts);
        }
    }

    /// <summary>Whether it is a text that bends with a count.</summary>
    public static bool Bends(JsonElement element) => element.TryGetProperty(Other, out _) && element.EnumerateObject().All(one => Forms.Contains(one.Name));

    private static IEnumerable<JsonElement> FormsOf(JsonElement text) =>
        text.ValueKind is JsonValueKind.Object ? text.EnumerateObject().Select(one => one.Value) : [text];

    /// <summary>Those of all forms together: nothing is counted where there is one.</summary>
    private static string[] SlotsOf(JsonElement text) =>
        [
            .. FormsOf(text).Where(form => form.ValueKind is JsonValueKind.String).SelectMany(form => Slot().Matches(form.GetString()!))
                .Select(slot => slot.Value).Distinct()
        ];

    /// <summary>Also one that is written amiss, so that it is told.</summary>
    [GeneratedRegex(@"\{[^}]*\}?")]
    private static partial Regex Slot();
}
