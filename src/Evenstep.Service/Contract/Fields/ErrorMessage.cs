using System.Collections.Immutable;
using System.Globalization;

namespace Evenstep.Service.Contract.Fields;

/// <summary>What is said of an error, in no language yet; it speaks one only where the error is written out.</summary>
/// <param name="Key">Names the sentence in the files of all languages.</param>
/// <param name="Values">What its slots are filled with, by name: texts that are the same in every language, or messages.</param>
internal sealed record ErrorMessage(string Key, ImmutableArray<(string Name, object Value)> Values)
{
    /// <summary>A sentence that holds nothing but a text in English.</summary>
    public const string InEnglish = "error/in-english";

    /// <summary>What is said where nothing is to be said.</summary>
    public static readonly ErrorMessage Nothing = Of("error/nothing");

    /// <summary>Whether some of it is in no other language.</summary>
    public bool IsEnglishOnly => Key == InEnglish || Values.Any(value => value.Value is ErrorMessage { IsEnglishOnly: true });

    /// <summary>A text that is in no file yet.</summary>
    public static implicit operator ErrorMessage(string english) => new(InEnglish, [("text", english)]);

    /// <summary>A message with values; a number is written as JSON writes it.</summary>
    public static ErrorMessage Of(string key, params ReadOnlySpan<(string Name, object Value)> values)
    {
        var made = ImmutableArray.CreateBuilder<(string Name, object Value)>(values.Length);
        foreach (var (name, value) in values)
        {
            made.Add((name, value as ErrorMessage ?? (object)Convert.ToString(value, CultureInfo.InvariantCulture)!));
        }

        return new ErrorMessage(key, made.MoveToImmutable());
    }
}
