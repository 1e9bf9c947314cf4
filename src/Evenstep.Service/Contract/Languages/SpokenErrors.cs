using Evenstep.Planning.Advice;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Contract.Languages;

/// <summary>Puts what is said of errors into words.</summary>
internal static class SpokenErrors
{
    public static string In(this ErrorMessage message, Language language) => SentenceOf(message).In(language);

    /// <summary>Whether all of it can be said in a language.</summary>
    public static bool IsIn(this ErrorMessage message, Language language) => language == Language.English || !message.IsEnglishOnly;

    private static Sentence SentenceOf(ErrorMessage message) => new(
        message.Key, [.. message.Values.Select(one => RemarkValue.Of(one.Name, one.Value is ErrorMessage part ? SentenceOf(part) : one.Value))]);
}
