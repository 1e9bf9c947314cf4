using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Evenstep.Benchmarks.Http;

namespace Evenstep.Benchmarks.Advised;

/// <summary>What was advised, and what would have been without the drawback looked into.</summary>
/// <param name="Plan">As advised.</param>
/// <param name="Without">The plan once everything bought that has such a view is excluded, until none is left; null if it has none.</param>
internal sealed record Advice(AdvisedPlan Plan, AdvisedPlan? Without);

/// <summary>Asks the service each request of the grid, on the demo catalogue.</summary>
internal static class AdviceRuns
{
    /// <summary>The drawback that is looked into, where the budget is ample.</summary>
    public const string LookedInto = "steep-cone";

    private const int TellAfter = 45;

    public static async Task<ImmutableArray<Advice>> RunAsync()
    {
        var noCatalogues = Directory.CreateTempSubdirectory();
        try
        {
            using var service = await Server.ServiceAsync(noCatalogues.FullName, cacheMegabytes: 0);
            using var client = new HttpClient { BaseAddress = service.Address };
            List<Advice> all = [];
            foreach (var (number, request) in AdviceGrid.Requests.Index())
            {
                if (number % TellAfter == 0)
                {
                    Progress.Tell($"advice, {number} of {AdviceGrid.Requests.Length}");
                }

                var plan = await AskAsync(client, request);
                all.Add(new Advice(plan, request.Budget >= AdviceGrid.AmpleBudget ? await WithoutAsync(client, plan) : null));
            }

            return [.. all];
        }
        finally
        {
            noCatalogues.Delete(recursive: true);
        }
    }

    private static async Task<AdvisedPlan?> WithoutAsync(HttpClient client, AdvisedPlan plan)
    {
        AdvisedPlan? without = null;
        for (var next = plan; next.HasBought(LookedInto);)
        {
            next = await AskAsync(client, next.Request with { Exclude = next.Request.Exclude.Union(next.BoughtWith(LookedInto)) });
            without = next;
        }

        return without;
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
