using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Evenstep.Service.Tests.Contract.Fields;

/// <summary>Changes a JSON text at some places; what is put there is raw text, and need not be JSON.</summary>
internal static partial class BodyPatch
{
    /// <summary>The text with every change made; null takes a field away, a last step of <c>-</c> lengthens a list.</summary>
    public static string Apply(string json, IReadOnlyDictionary<string, string?> changes)
    {
        var body = JsonNode.Parse(json)!;
        foreach (var (i, (pointer, text)) in changes.Index())
        {
            Put(body, pointer, text is null ? null : Mark(i));
        }

        var marked = new StringBuilder(body.ToJsonString());
        foreach (var (i, (_, text)) in changes.Index())
        {
            marked.Replace($"\"{Mark(i)}\"", Expand(text ?? ""));
        }

        return marked.ToString();
    }

    /// <summary>
    /// Writes out repetitions: <c>⟦ab×3⟧</c> is <c>ababab</c>; a <c>#</c> in it stands for the number of the turn, from 1.
    /// </summary>
    public static string Expand(string text) => Repetition().Replace(text, found =>
        Repeat(found.Groups["text"].Value, int.Parse(found.Groups["times"].Value, CultureInfo.InvariantCulture), ""));

    public static string Repeat(string text, int times, string separator) => string.Join(
        separator, Enumerable.Range(1, times).Select(turn => text.Replace("#", turn.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)));

    private static void Put(JsonNode body, string pointer, string? mark)
    {
        var steps = RequestPointer.Steps(pointer);
        var parent = steps.SkipLast(1).Aggregate(body, (node, step) => (node is JsonArray list ? list[Index(step)] : node[step])!);
        if (parent is JsonArray array)
        {
            PutInList(array, steps[^1], mark);
        }
        else if (mark is null)
        {
            Assert.True(parent.AsObject().Remove(steps[^1]), $"{pointer} is not there to be taken away.");
        }
        else
        {
            parent[steps[^1]] = mark;
        }
    }

    private static void PutInList(JsonArray list, string step, string? mark)
    {
        if (step == "-")
        {
            list.Add(mark);
        }
        else if (mark is null)
        {
            list.RemoveAt(Index(step));
        }
        else
        {
            list[Index(step)] = mark;
        }
    }

    private static int Index(string step) => int.Parse(step, CultureInfo.InvariantCulture);

    private static string Mark(int change) => string.Create(CultureInfo.InvariantCulture, $"@change {change}@");

    [GeneratedRegex("⟦(?<text>[^⟧]*)×(?<times>[0-9]+)⟧")]
    private static partial Regex Repetition();
}
