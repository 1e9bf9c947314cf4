using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;

namespace Evenstep.Benchmarks.Trials.Fuzz;

/// <summary>What came back.</summary>
/// <param name="Status">The HTTP status.</param>
/// <param name="MediaType">Of the body; empty without one.</param>
/// <param name="Headers">The names of all headers.</param>
/// <param name="Body">As text.</param>
internal sealed record FuzzAnswer(int Status, string MediaType, IReadOnlyList<string> Headers, string Body);

/// <summary>
/// Holds an answer against the committed document, and the service's verdict on a request against the validator's.
/// </summary>
internal sealed partial class FuzzJudge(Validator validator)
{
    /// <summary>
    /// The faults that no JSON Schema can see, by their codes: arithmetic on decimals, one number against another, what other
    /// parts of the body or the storage know, repeated fields, ids and names, and texts that are not valid Unicode.
    /// </summary>
    public static readonly IReadOnlyList<string> BeyondSchemas =
        ["too-many-decimals", "empty-range", "unknown-item", "unknown-telescope", "unknown-catalogue", "duplicate", "invalid-text"];

    private static readonly string[] OfTransport =
        [
            "Content-Type", "Content-Length", "Transfer-Encoding", "Date", "Server", "Connection", "Keep-Alive", "Access-Control-Allow-Origin",
            "Access-Control-Expose-Headers"
        ];

    /// <summary>All that is wrong; nothing for an answer that is as it must be.</summary>
    public IEnumerable<string> Findings(FuzzRequest request, FuzzAnswer answer)
    {
        if (answer.Status >= 500 && answer.Status is not (503 or 507))
        {
            yield return $"5xx: {answer.Status}";
        }

        if (request.Operation.Node["responses"]![answer.Status.ToString(CultureInfo.InvariantCulture)] is not JsonObject declared)
        {
            yield return $"outside the document: status {answer.Status} is not declared";
            yield break;
        }

        var headers = declared["headers"]?.AsObject() ?? [];
        var known = OfTransport.Concat(headers.Select(one => one.Key)).ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var name in answer.Headers.Where(name => !known.Contains(name)))
        {
            yield return $"outside the document: header {name} is not declared for {answer.Status}";
        }

        if (BodyFault(request, declared, answer) is { } fault)
        {
            yield return $"outside the document: {fault}";
        }

        foreach (var disagreement in Disagreements(request, answer))
        {
            yield return $"disagreement: {disagreement}";
        }
    }

    private string? BodyFault(FuzzRequest request, JsonObject declared, FuzzAnswer answer)
    {
        if (answer.Body.Length == 0)
        {
            // The server refuses a path with a null character by itself, before any code of the service is asked.
            return answer.Status >= 400 && !request.Target.Contains("%00", StringComparison.Ordinal)
                ? $"{answer.Status} came without a problem document"
                : null;
        }

        if (declared["content"]?[answer.MediaType] is null)
        {
            return $"media type '{answer.MediaType}' is not declared for {answer.Status}";
        }

        var pointer = request.Operation.AnswerPointer(answer.Status.ToString(CultureInfo.InvariantCulture), answer.MediaType);
        return answer.MediaType switch
        {
            "application/x-ndjson" => Lines(answer.Body).Select(line => Fault(pointer, line)).FirstOrDefault(fault => fault is not null),
            "image/svg+xml" => XmlFault(answer.Body),
            "text/csv" => null,
            _ => Fault(pointer, answer.Body),
        };
    }

    private string? Fault(string pointer, string json) => validator.Errors(new SchemaQuestion(pointer, json)) is { Length: > 0 } errors ? errors : null;

    private static string? XmlFault(string text)
    {
        try
        {
            XDocument.Parse(text);
            return null;
        }
        catch (XmlException fault)
        {
            return $"the picture is not XML: {fault.Message}";
        }
    }

    private IEnumerable<string> Disagreements(FuzzRequest request, FuzzAnswer answer)
    {
        if (request.Operation.Path.EndsWith("/batch", StringComparison.Ordinal))
        {
            return request.Lines.Count > 0 && answer.Status == 200 ? OfLines(request, answer) : [];
        }

        // What a change makes of an item is not in the schema of the change: only what the schema refuses is certain.
        var isChange = request.Operation.Method == "patch";
        if (request.Lines.Count > 0)
        {
            return answer.Status == 200 && request.Lines.Any(line => validator.Errors(line).Length > 0) ? ["a line that the schema refuses was taken"] : [];
        }

        return request.Questions is { } questions && !IsBare(answer) && answer.Status is 200 or 201 or 204 or 304 or 400
            ? OfWhole(request, questions, answer, isChange)
            : [];
    }

    /// <summary>A refusal without a problem document, which is a finding of its own.</summary>
    private static bool IsBare(FuzzAnswer answer) => answer is { Status: 400, MediaType: not "application/problem+json" };

    private IEnumerable<string> OfWhole(FuzzRequest request, IReadOnlyList<SchemaQuestion> questions, FuzzAnswer answer, bool isChange)
    {
        var errors = string.Join("; ", questions.Select(validator.Errors).Where(one => one.Length > 0));
        if (answer.Status != 400)
        {
            return errors.Length > 0 ? [$"taken, though the schema says: {errors}"]
                : request.HasBadQuery && request.Target.StartsWith("/v1/", StringComparison.Ordinal) ? ["a query that is not known was taken"]
                : [];
        }

        var unexplained = Codes(answer.Body).Except(BeyondSchemas).ToArray();
        var mayBeBeyond = errors.Length > 0 || questions.Any(question => RepeatsField(question.Json)) || request.HasBadQuery || isChange
            || IsBeyond(request, unexplained);
        return mayBeBeyond || (unexplained.Length == 0 && Codes(answer.Body).Length > 0)
            ? []
            : [$"refused with {string.Join(", ", unexplained)}, though the schema takes it: {answer.Body[..Math.Min(answer.Body.Length, 600)]}"];
    }

    /// <summary>Parameters that depend on one another or on the type of the body, and cursors, which the service makes up.</summary>
    private static bool IsBeyond(FuzzRequest request, string[] codes) =>
        HasUndescribedFault(request)
        || (request.Operation.Path.EndsWith("/match", StringComparison.Ordinal) && codes.All(code => code is "missing" or "unknown-field"))
        || request.Target.Contains("cursor=", StringComparison.Ordinal)
        || (request.BodyType != "text/csv"
            && (request.Target.Contains("currency=", StringComparison.Ordinal) || request.Target.Contains("unknownColumns=", StringComparison.Ordinal)));

    /// <summary>The document gives ids of catalogues in paths and entity tags no pattern; the service tells of them without <c>errors</c>.</summary>
    private static bool HasUndescribedFault(FuzzRequest request) =>
        !CatalogueId().IsMatch(request.Target)
        || request.Headers.Any(
            header => header.Name is "If-Match" or "If-None-Match" && header.Value != "*" && !header.Value.Contains('"', StringComparison.Ordinal));

    [GeneratedRegex("^/(?!v1/catalogues/)|^/v1/catalogues/[a-z0-9][a-z0-9-]{0,62}([/?]|$)")]
    private static partial Regex CatalogueId();

    private IEnumerable<string> OfLines(FuzzRequest request, FuzzAnswer answer)
    {
        string[] answers = [.. Lines(answer.Body)];
        if (answers.Length != request.Lines.Count)
        {
            yield return $"{request.Lines.Count} lines were answered with {answers.Length}";
            yield break;
        }

        foreach (var (line, said) in request.Lines.Zip(answers))
        {
            var isTaken = JsonSerializer.Deserialize<JsonElement>(said).TryGetProperty("recommendation", out _);
            var errors = validator.Errors(line);
            if (isTaken && errors.Length > 0)
            {
                yield return $"a line was taken, though the schema says: {errors}";
            }
            else if (!isTaken && errors.Length == 0 && !RepeatsField(line.Json) && said.Contains("\"status\":400", StringComparison.Ordinal)
                && (Codes(said).Length == 0 || Codes(said).Except(BeyondSchemas).Any()))
            {
                yield return $"a line was refused, though the schema takes it: {said[..Math.Min(said.Length, 600)]}";
            }
        }
    }

    /// <summary>Of a field that is given twice the validator sees the last value alone.</summary>
    private static bool RepeatsField(string json)
    {
        try
        {
            using var read = JsonDocument.Parse(json.TrimStart('\uFEFF'), new JsonDocumentOptions { AllowDuplicateProperties = false });
            return false;
        }
        catch (JsonException)
        {
            return true;
        }
    }

    private static IEnumerable<string> Lines(string text) => text.Split('\n').Where(line => !string.IsNullOrWhiteSpace(line));

    private static string[] Codes(string problem)
    {
        var read = JsonSerializer.Deserialize<JsonElement>(problem);
        read = read.TryGetProperty("problem", out var inner) ? inner : read;
        return read.TryGetProperty("errors", out var errors) && errors.ValueKind == JsonValueKind.Object
            ? [.. errors.EnumerateObject().SelectMany(place => place.Value.EnumerateArray()).Select(error => error.GetProperty("code").GetString()!).Distinct()]
            : [];
    }
}
