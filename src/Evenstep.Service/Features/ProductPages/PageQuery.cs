using System.Text.Json;
using System.Text.Json.Nodes;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Routing;
using Microsoft.Extensions.Primitives;

namespace Evenstep.Service.Features.ProductPages;

/// <summary>
/// The query of a page. It amounts to the body of a request for a recommendation, and is read as one: by the same tables of
/// fields, all faults at once, each named by its parameter.
/// </summary>
/// <param name="parameters">What may be given.</param>
internal sealed class PageQuery(params QueryParameter[] parameters)
{
    /// <summary>What may be given, as every endpoint says it.</summary>
    public QueryRule Rule { get; } = new([.. parameters.Select(parameter => parameter.Field with { Name = parameter.Name })]);

    /// <summary>Puts what a query says into a body. An empty parameter is as good as none, for forms send what is not filled in.</summary>
    public void Fill(JsonObject body, IQueryCollection query, Faults faults)
    {
        Rule.ReportUnknown(query, faults);

        // In the order of the table, so that the same query makes the same body in whatever order it is written.
        foreach (var parameter in parameters)
        {
            Put(parameter, query[parameter.Name], body, faults);
        }
    }

    /// <summary>Has a body read, and names what is wrong with it by the parameters that it was made of.</summary>
    public T? Read<T>(JsonObject body, IQueryCollection query, Func<JsonElement, Faults, T?> read, Faults faults)
        where T : class
    {
        using var json = JsonDocument.Parse(body.ToJsonString());
        var inBody = new Faults { AreOfQuery = true };
        var asked = read(json.RootElement, inBody);
        faults.AddAll(inBody, pointer => PointerOf(ParameterOf(pointer), query), fault => HintOn(ParameterOf(fault.Pointer), query));
        return faults.Any ? null : asked;
    }

    private static void Put(QueryParameter parameter, StringValues values, JsonObject body, Faults faults)
    {
        if (values.Count > 1 && !parameter.IsRepeated)
        {
            QueryRule.ReportRepeated(parameter.Name, faults);
        }

        // Of a repeated one the first stands, so that it does not seem to be missing too.
        if (values.OfType<string>().Where(text => text.Length > 0).ToList() is { Count: > 0 } texts)
        {
            parameter.Put(body, texts);
        }
    }

    /// <summary>Of a parameter that was given too often nothing more is said.</summary>
    private static RequestPointer? PointerOf(QueryParameter parameter, IQueryCollection query) =>
        query[parameter.Name].Count > 1 && !parameter.IsRepeated ? null : RequestPointer.OfQuery(parameter.Name);

    /// <summary>The parameter that a place in the body was made of; where it was made of several, the first of them.</summary>
    private QueryParameter ParameterOf(string pointer)
    {
        var within = parameters.Where(one => pointer == one.Pointer || pointer.StartsWith($"{one.Pointer}/", StringComparison.Ordinal));
        var around = parameters.Where(one => one.Pointer.StartsWith($"{pointer}/", StringComparison.Ordinal));
        return within.OrderByDescending(one => one.Pointer.Length).Concat(around).FirstOrDefault() ?? parameters[0];
    }

    /// <summary>Helps whoever put several values into one.</summary>
    private static string HintOn(QueryParameter parameter, IQueryCollection query)
    {
        var list = parameter.IsRepeated ? query[parameter.Name].FirstOrDefault(text => text?.Contains(',', StringComparison.Ordinal) is true) : null;
        return list is null ? ""
            : " To give several, repeat the parameter: " +
              $"{ErrorText.Shortened(string.Join('&', list.Split(',').Select(one => $"{parameter.Name}={one.Trim()}")))}";
    }
}
