using System.Text.Json;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Http.Routing;

/// <summary>What an endpoint takes in its query. The same table reads the parameters, refuses all others, and describes them in the OpenAPI document.</summary>
/// <param name="parameters">The table.</param>
internal sealed class QueryRule(params Field[] parameters)
{
    private static readonly QueryRule Nothing = new();

    /// <summary>The table; empty where nothing is taken.</summary>
    public IReadOnlyList<Field> Parameters => parameters;

    /// <summary>The rule of the endpoint that a request is for: nothing is taken, unless its metadata say otherwise.</summary>
    public static QueryRule Of(HttpContext context) => context.GetEndpoint()?.Metadata.GetMetadata<QueryRule>() ?? Nothing;

    /// <summary>Reports every parameter that is not in the table.</summary>
    public void ReportUnknown(IQueryCollection query, Faults faults)
    {
        foreach (var name in query.Keys.Where(name => !parameters.Any(parameter => parameter.Name == name)))
        {
            faults.Add(
                RequestPointer.OfQuery(name), FaultCode.UnknownField,
                () => ErrorMessage.Of("error/unknown-parameter", ("name", ErrorText.Quoted(name)), ("instead", Instead(name))));
        }
    }

    /// <summary>The value of a parameter of the table; null where it is not given, or faulty.</summary>
    public static T? Read<T>(Field<T> parameter, IQueryCollection query, Faults faults)
    {
        var given = query[parameter.Name];
        if (given.Count > 1)
        {
            ReportRepeated(parameter.Name, faults);
        }

        return given is [{ } text]
            ? parameter.Shape.Read(JsonSerializer.SerializeToElement(TextAsJson.Of(parameter.Shape, text)), RequestPointer.OfQuery(parameter.Name), faults)
            : default;
    }

    /// <summary>Reports a parameter that is given more than once and may not be.</summary>
    public static void ReportRepeated(string name, Faults faults) =>
        faults.Add(RequestPointer.OfQuery(name), FaultCode.Duplicate, () => ErrorMessage.Of("error/field-twice", ("field", name)));

    private ErrorMessage Instead(string name)
    {
        var known = parameters.Select(parameter => parameter.Name).ToList();
        return known.Count == 0 ? ErrorMessage.Of("error/unknown-parameter/none")
            : NearestName.To(name, known) is { } nearest ? ErrorMessage.Of("error/unknown-parameter/nearest", ("nearest", nearest))
            : ErrorMessage.Of("error/unknown-parameter/known", ("known", ErrorText.List(known)));
    }
}
