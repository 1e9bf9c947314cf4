using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Evenstep.Benchmarks.Http;

namespace Evenstep.Benchmarks.Advised;

/// <summary>Asks the service each request of the grid, on the demo catalogue.</summary>
internal static class AdviceRuns
{
    private const int TellAfter = 45;

    public static async Task<ImmutableArray<AdvisedPlan>> RunAsync()
    {
        var noCatalogues = Directory.CreateTempSubdirectory();
        try
        {
            using var service = await Server.ServiceAsync(noCatalogues.FullName, cacheMegabytes: 0);
            using var client = new HttpClient { BaseAddress = service.Address };
            List<AdvisedPlan> plans = [];
            foreach (var (number, request) in AdviceGrid.Requests.Index())
            {
                if (number % TellAfter == 0)
                {
                    Progress.Tell($"advice, {number} of {AdviceGrid.Requests.Length}");
                }

                plans.Add(await AskAsync(client, request));
            }

            return [.. plans];
        }
        finally
        {
            noCatalogues.Delete(recursive: true);
        }
    }

    private static async Task<AdvisedPlan> AskAsync(HttpClient client, GridRequest request)
    {
        using var content = new StringContent(request.Body, Encoding.UTF8, "application/json");
        using var response = await client.PostAsync(new Uri(HttpRuns.Path, UriKind.Relative), content);
        var text = await response.Content.ReadAsStringAsync();
        if (!response.IsSuccessStatusCode)
        {
            throw new InvalidOperationException($"{request.Name}: {(int)response.StatusCode}, {text}");
        }

        using var answer = JsonDocument.Parse(text);
        return new AdvisedPlan(request, answer.RootElement);
    }
}
