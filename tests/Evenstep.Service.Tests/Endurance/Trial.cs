using Evenstep.Benchmarks.Trials;

namespace Evenstep.Service.Tests.Endurance;

/// <summary>The service in a process of its own, as the tests start it, and what they ask of it.</summary>
internal static class Trial
{
    public const string Recommend = "/v1/recommendations";

    /// <summary>A hang ends the test; nothing else is measured by it.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    public static TrialStart Start(params (string Key, string Value)[] settings) => new()
    {
        Assembly = Path.Combine(AppContext.BaseDirectory, "Evenstep.Service.dll"),
        Settings = settings,
    };

    /// <summary>Answered in a few milliseconds. Different budgets make different requests.</summary>
    public static string Small(int budget) => $$$"""
        {"telescopes":[{"apertureMm":203,"focalLengthMm":1218,"focuserBarrel":"2in"}],"catalogue":{"id":"demo"},"limits":{"budget":{{{budget}}}}}
        """;

    /// <summary>The answer; a test that waits longer than <see cref="Patience"/> fails.</summary>
    public static async Task<Answer> AskAsync(
        this TrialService service, HttpMethod method, string path, string? body = null, params (string Name, string Value)[] headers)
    {
        using var patience = new CancellationTokenSource(Patience);
        using var request = new HttpRequestMessage(method, new Uri(path, UriKind.Relative));
        request.Content = body is null ? null : new StringContent(body, System.Text.Encoding.UTF8, "application/json");
        foreach (var (name, value) in headers)
        {
            request.Headers.TryAddWithoutValidation(name, value);
        }

        using var response = await service.Client.SendAsync(request, patience.Token);
        return await Answer.OfAsync(response);
    }

    public static Task<Answer> RecommendAsync(this TrialService service, int budget = 150) => service.AskAsync(HttpMethod.Post, Recommend, Small(budget));
}
