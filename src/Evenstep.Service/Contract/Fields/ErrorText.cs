using System.Text.Json;

namespace Evenstep.Service.Contract.Fields;

/// <summary>Says at the beginning of a message what a body held.</summary>
internal static class ErrorText
{
    private const int LongestShown = 60;

    public static string Of(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => "An object",
        JsonValueKind.Array => "A list",
        JsonValueKind.String => TextOf(value) is { } text ? Quoted(text) : "Text that is not valid Unicode",
        _ => Cut(value.GetRawText()),
    };

    /// <summary>The same in no language yet.</summary>
    public static ErrorMessage MessageOf(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => ErrorMessage.Of("error/given/object"),
        JsonValueKind.Array => ErrorMessage.Of("error/given/list"),
        JsonValueKind.String when TextOf(value) is null => ErrorMessage.Of("error/given/invalid-text"),
        _ => ErrorMessage.Of("error/given", ("value", Of(value))),
    };

    /// <summary>In quotation marks, cut to a readable length, with nothing in it that a terminal would obey.</summary>
    public static string Quoted(string text) => $"\"{Shortened(text)}\"";

    /// <summary>The same without the quotation marks.</summary>
    public static string Shortened(string text) => Cut(string.Concat(text.Take(LongestShown + 1).Select(Visible)));

    /// <summary>The text of a string, or null if it holds half a surrogate pair or bytes that are not UTF-8.</summary>
    public static string? TextOf(JsonElement value)
    {
        try
        {
            return value.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>The name of a property, or null as above.</summary>
    public static string? NameOf(JsonProperty property)
    {
        try
        {
            return property.Name;
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>The first property of a name; not by the framework's search, which a name that is not valid Unicode breaks.</summary>
    public static JsonElement? Find(JsonElement value, string name)
    {
        foreach (var property in value.EnumerateObject())
        {
            if (NameOf(property) == name)
            {
                return property.Value;
            }
        }

        return null;
    }

    public static string List(IEnumerable<string> names) => string.Join(", ", names.Select(name => $"`{name}`"));

    private static string Cut(string text) => text.Length <= LongestShown ? text : text[..LongestShown] + "…";

    private static char Visible(char letter) => char.IsControl(letter) ? '\uFFFD' : letter;
}
