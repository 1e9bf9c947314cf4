using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Http.Errors;

/// <summary>Helps whoever asks at an address where nothing is.</summary>
internal sealed class NearestAddress(EndpointDataSource endpoints)
{
    private const string Interface = "/v1";

    /// <summary>What to ask for instead.</summary>
    public string InsteadOf(string path)
    {
        var given = path.Split('/');
        return NearestName.To(path, Patterns().Select(pattern => Filled(pattern.Split('/'), given))) is { } nearest
            ? $"Did you mean `{nearest}`?"
            : $"There are {ErrorText.List(Patterns().Where(IsPlain).Order(StringComparer.Ordinal))}, and more.";
    }

    private IEnumerable<string> Patterns() => endpoints.Endpoints.OfType<RouteEndpoint>()
        .Select(endpoint => $"/{endpoint.RoutePattern.RawText?.Trim('/')}").Distinct();

    private static bool IsPlain(string pattern) =>
        pattern.StartsWith($"{Interface}/", StringComparison.Ordinal) && !pattern.Contains('{', StringComparison.Ordinal);

    /// <summary>A pattern whose parameters stand for what was given in their places.</summary>
    private static string Filled(string[] pattern, string[] given) =>
        string.Join('/', pattern.Select((step, i) => step.StartsWith('{') && i < given.Length && given.Length == pattern.Length ? given[i] : step));
}
