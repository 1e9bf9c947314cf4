using System.Text;
using System.Text.Json.Nodes;
using Evenstep.Benchmarks.Problems;

namespace Evenstep.Benchmarks.Trials.Fuzz;

/// <summary>A question for the validator: some JSON, and the schema that it is to be held against.</summary>
internal sealed record SchemaQuestion(string Pointer, string Json);

/// <summary>What is sent.</summary>
/// <param name="Seed">By which it can be drawn again.</param>
/// <param name="Operation">Of the document.</param>
/// <param name="Target">Path and query.</param>
/// <param name="Body">Null for none.</param>
/// <param name="BodyType">Its media type.</param>
/// <param name="Headers">Further headers.</param>
internal sealed record FuzzRequest(
    int Seed, ApiOperation Operation, string Target, byte[]? Body, string BodyType, IReadOnlyList<(string Name, string Value)> Headers)
{
    /// <summary>What decides whether the request is valid: the body as JSON, or each parameter. Null where no schema can say.</summary>
    public IReadOnlyList<SchemaQuestion>? Questions { get; init; }

    /// <summary>For a body of lines: what decides over each.</summary>
    public IReadOnlyList<SchemaQuestion> Lines { get; init; } = [];

    /// <summary>Whether the query has a name that the operation does not know, or a single parameter twice.</summary>
    public bool HasBadQuery { get; init; }

    public override string ToString()
    {
        var body = Body is null ? "" : Encoding.UTF8.GetString(Body);
        return $"seed {Seed}: {Operation.Method.ToUpperInvariant()} {Target} {BodyType} {string.Join(' ', Headers)} {body[..Math.Min(body.Length, 1500)]}";
    }
}

/// <summary>Draws requests for all operations of the document: valid ones, and ones that are spoilt in some way. The same seed gives the same
/// request.</summary>
internal sealed class FuzzDraw
{
    private const string Json = "application/json";
    private const string Lines = "application/x-ndjson";

    private readonly IReadOnlyList<ApiOperation> operations;
    private readonly Dictionary<string, JsonNode[]> examples;
    private readonly KnownIds known;
    private readonly int seed;
    private readonly Dice dice;
    private readonly SchemaDraw schema;
    private readonly BodyMutator mutator;

    public FuzzDraw(ApiDocument document, KnownIds known, int seed)
    {
        operations = [.. document.Operations];
        examples = operations.SelectMany(
            operation => operation.BodyTypes.Select(type => (Key: Key(operation, type), Node: operation.Node["requestBody"]!["content"]![type]!)))
            .ToDictionary(
                one => one.Key,
                one => (one.Node["examples"]?.AsObject() ?? []).Select(example => example.Value?["value"]).OfType<JsonNode>()
                    .Where(value => value is JsonObject).ToArray());
        this.known = known;
        this.seed = seed;
        dice = new Dice(seed, 20_261_128);
        schema = new SchemaDraw(document, known, dice);
        mutator = new BodyMutator(dice);
    }

    public FuzzRequest Next()
    {
        var withBody = dice.Chance(0.8);
        var operation = dice.Pick([.. operations.Where(one => withBody == !one.BodyTypes.IsEmpty && (one.Method != "delete" || dice.Chance(0.2)))]);
        var path = PathOf(operation);
        var (query, questions, isBad) = Query(operation);
        var bare = new FuzzRequest(seed, operation, path + query, null, "", Headers(operation)) { HasBadQuery = isBad };
        questions = [.. questions, .. PathQuestions(operation, path), .. HeaderQuestions(bare)];
        return operation.BodyTypes.IsEmpty ? bare with { Questions = questions } : WithBody(bare, questions);
    }

    private static string Key(ApiOperation operation, string type) => $"{operation.Method} {operation.Path} {type}";

    private FuzzRequest WithBody(FuzzRequest request, IReadOnlyList<SchemaQuestion> query)
    {
        var type = dice.Pick(request.Operation.BodyTypes);
        var sent = dice.Chance(0.02) ? dice.Pick("text/plain", "application/xml", "", "application/json; charset=utf-16") : type;
        var typed = request with { BodyType = sent };
        return type switch
        {
            "text/csv" => typed with { Body = request.Operation.Method == "put" ? new CsvDraw(known, dice).Catalogue() : new CsvDraw(known, dice).Changes() },
            Lines => WithLines(typed, type),
            _ => WithJson(typed, type, query),
        };
    }

    private FuzzRequest WithJson(FuzzRequest request, string type, IReadOnlyList<SchemaQuestion> query)
    {
        var body = Body(request.Operation, type);
        var text = Encoding.UTF8.GetString(body);
        var isText = Encoding.UTF8.GetBytes(text).AsSpan().SequenceEqual(body);
        return request with
        {
            Body = body,
            Questions = request.BodyType == type && isText ? [new SchemaQuestion(request.Operation.BodyPointer(type), text), .. query] : null,
        };
    }

    private FuzzRequest WithLines(FuzzRequest request, string type)
    {
        string[] lines = [.. Enumerable.Range(0, dice.Int(1, 6)).Select(_ => Encoding.UTF8.GetString(Body(request.Operation, type)).ReplaceLineEndings(" "))];
        return request with
        {
            Body = Encoding.UTF8.GetBytes(string.Join(dice.Pick("\n", "\n", "\r\n"), lines)),
            Lines = request.BodyType == type
                ? [.. lines.Where(line => !string.IsNullOrWhiteSpace(line)).Select(line => new SchemaQuestion(request.Operation.BodyPointer(type), line))]
                : [],
        };
    }

    private byte[] Body(ApiOperation operation, string type)
    {
        var kept = examples[Key(operation, type)];
        var body = kept.Length > 0 && dice.Chance(0.4)
            ? dice.Pick(kept).DeepClone()
            : schema.Draw(operation.Node["requestBody"]!["content"]![type]!["schema"]!.AsObject()) ?? new JsonObject();
        if (body is JsonObject fields && operation.Path.EndsWith("/batch", StringComparison.Ordinal) && !fields.ContainsKey("id"))
        {
            fields["id"] = "line";
        }

        return dice.Chance(0.6) ? mutator.Mutate(body) : Encoding.UTF8.GetBytes(body.ToJsonString());
    }

    private string PathOf(ApiOperation operation)
    {
        // Changes go to catalogues that can be changed, pages are those of the demo catalogue; now and then the other way round.
        var usual = operation.Method is "put" or "patch" or "delete" ? known.Catalogues[^1] : "demo";
        var items = usual == "demo" ? known.Items : known.ChangedItems;
        return operation.Path
            .Replace("{id}", Odd(dice.Chance(0.9) ? usual : dice.Pick(known.Catalogues)), StringComparison.Ordinal)
            .Replace("{itemId}", Odd(dice.Pick(items)), StringComparison.Ordinal)
            .Replace("{telescopeId}", Odd(dice.Pick(known.Telescopes)), StringComparison.Ordinal);
    }

    private static IEnumerable<SchemaQuestion> PathQuestions(ApiOperation operation, string path)
    {
        var (names, values) = (operation.Path.Split('/'), path.Split('/'));
        return
            from parameter in operation.Parameters
            where parameter.Node["in"]!.GetValue<string>() == "path"
            let at = Array.IndexOf(names, $"{{{parameter.Node["name"]}}}")
            select new SchemaQuestion(operation.ParameterPointer(parameter.Index), JsonValue.Create(Uri.UnescapeDataString(values[at])).ToJsonString());
    }

    private static IEnumerable<SchemaQuestion> HeaderQuestions(FuzzRequest request) =>
        from parameter in request.Operation.Parameters
        where parameter.Node["in"]!.GetValue<string>() == "header"
        from header in request.Headers
        where header.Name == parameter.Node["name"]!.GetValue<string>()
        select new SchemaQuestion(request.Operation.ParameterPointer(parameter.Index), JsonValue.Create(header.Value).ToJsonString());

    private string Odd(string id) =>
        dice.Chance(0.05)
            ? dice.Pick("%20", "%C3%A4", "none", new string('a', 64), new string('b', 300), "A", "%0A", "%22", "%2F", "%FF", "%00", "-a")
            : Uri.EscapeDataString(id);

    private (string Query, IReadOnlyList<SchemaQuestion> Questions, bool IsBad) Query(ApiOperation operation)
    {
        List<string> parts = [];
        List<SchemaQuestion> questions = [];
        var isBad = false;
        foreach (var (index, parameter) in operation.Parameters.Where(one => one.Node["in"]!.GetValue<string>() == "query" && dice.Chance(0.35)))
        {
            var described = parameter["schema"]!.AsObject();
            var values = Values(described, parameter["name"]!.GetValue<string>());
            parts.AddRange(values.Select(value => $"{parameter["name"]}={Uri.EscapeDataString(value)}"));
            questions.Add(new SchemaQuestion(operation.ParameterPointer(index), AsJson(described, values)));
        }

        if (dice.Chance(0.03))
        {
            parts.Add(dice.Pick("nonsense=1", "Budget=1", "=1", "a[b]=c"));
            isBad = true;
        }

        return (parts.Count == 0 ? "" : "?" + string.Join('&', parts), questions, isBad);
    }

    /// <summary>At least one; an empty value would count as none.</summary>
    private string[] Values(JsonObject described, string name)
    {
        string One(JsonObject of) => dice.Chance(0.25)
            ? dice.Pick("x", "-1", "1e9", "0.5", "TRUE", "null", "1 5", "1,5", "\u0001", "100000000000000000000", "0x10", "NaN", "٣")
            : (name == "telescope" ? dice.Pick(known.Telescopes) : name == "owned" ? dice.Pick(known.Items) : AsText(schema.Draw(of)));
        return described["items"] is JsonObject items ? [.. Enumerable.Range(0, dice.Int(1, 3)).Select(_ => One(items))] : [One(described)];
    }

    private static string AsText(JsonNode? value) => value is JsonValue one && one.TryGetValue<string>(out var text) ? text : value?.ToJsonString() ?? "x";

    /// <summary>What a query's texts mean as JSON, by the type that is described.</summary>
    private static string AsJson(JsonObject described, string[] values)
    {
        static string One(JsonObject of, string value) =>
            of["type"]?.GetValue<string>() is "number" or "integer" or "boolean" && IsLiteral(value) ? value : JsonValue.Create(value).ToJsonString();
        return described["items"] is JsonObject items ? $"[{string.Join(',', values.Select(value => One(items, value)))}]" : One(described, values[0]);
    }

    private static bool IsLiteral(string value)
    {
        try
        {
            return JsonNode.Parse(value) is JsonValue;
        }
        catch (System.Text.Json.JsonException)
        {
            return false;
        }
    }

    private List<(string Name, string Value)> Headers(ApiOperation operation)
    {
        List<(string, string)> headers = [];
        if (dice.Chance(0.1))
        {
            headers.Add(("Accept-Language", dice.Pick("de", "en;q=0.5, de", "xx", "*", "de;q=2", "-", new string('a', 500))));
        }

        if (dice.Chance(0.1))
        {
            headers.Add(("Accept", dice.Pick(Json, "*/*", "image/svg+xml", "text/csv", "text/html", "application/problem+json", "a/b;q=0", "nonsense")));
        }

        if (dice.Chance(0.05) && operation.Path.Contains('{', StringComparison.Ordinal))
        {
            headers.Add((dice.Pick("If-Match", "If-None-Match"), dice.Pick("*", "\"x\"", "W/\"x\"", "x", "\"a\", \"b\"")));
        }

        return headers;
    }
}
