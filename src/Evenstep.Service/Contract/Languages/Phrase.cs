using Evenstep.Planning.Advice;

namespace Evenstep.Service.Contract.Languages;

/// <summary>Something worth saying: a code, the values that belong to it, and a sentence made of them.</summary>
internal sealed record RemarkAnswer
{
    /// <summary>The code, the same in every language; listed in this document's description.</summary>
    public required string Code { get; init; }

    /// <summary>The sentence, in the language of the answer.</summary>
    public required Sentence Text { get; init; }

    /// <summary>What the sentence is about, by name.</summary>
    public required SaidValues Values { get; init; }
}

/// <summary>Finds the sentences for remarks.</summary>
internal static class Phrase
{
    /// <summary>The remark with the sentence that its section, its code and perhaps a variant name.</summary>
    public static RemarkAnswer Of(string section, Remark remark, string? variant = null) => new()
    {
        Code = remark.Code,
        Text = new Sentence((variant ?? remark.Variant) is { } special ? $"{section}/{remark.Code}/{special}" : $"{section}/{remark.Code}", remark.Values),
        Values = new SaidValues(remark.Values),
    };

    /// <summary>The same remark, whose sentence has further parts beside the values.</summary>
    public static RemarkAnswer With(this RemarkAnswer phrase, params IEnumerable<RemarkValue> parts) =>
        phrase with { Text = phrase.Text with { Values = [.. phrase.Text.Values, .. parts] } };

    /// <summary>The value of that name, which the remark must have.</summary>
    public static RemarkValue ValueOf(Remark remark, string name) => remark.Values.First(value => value.Name == name);

    public static SaidValues ValuesOf(IEnumerable<RemarkValue> values) => new([.. values]);
}
