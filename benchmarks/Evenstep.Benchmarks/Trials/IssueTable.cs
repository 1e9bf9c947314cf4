using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Evenstep.Benchmarks.Problems;

namespace Evenstep.Benchmarks.Trials;

/// <summary>The requests that are known to be the heaviest, each on a service of its own that is killed at a bound.</summary>
internal static class IssueTable
{
    private const double MostMegabytes = 4000;
    /// <summary>What the heavy requests may spend.</summary>
    public const int UsualBudget = 1200;

    private const string Recommend = "/v1/recommendations";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(50);

    private static readonly JsonObject Widest = new() { ["maxPurchases"] = 8, ["maxBarlows"] = 4, ["allowedOverlaps"] = 20 };

    /// <summary>No step is wide enough to be left alone, so that a search never ends early.</summary>
    private static readonly JsonObject Even = new() { ["enoughStep"] = 1 };

    /// <summary>Every row, by the name that the command line knows it by.</summary>
    public static readonly IReadOnlyList<(string Name, Func<Task<TrialResult>> Run)> Rows =
    [
        ("certify-3000", () => OneAsync("a default request on 3000 items with `explain.certify`", Recommend, Body(new CatalogueMix(3000), certify: true))),
        ("certify-three-factors", () => OneAsync(
            "300 items, 40 % of them Barlows of three factors, certify", Recommend,
            Body(new CatalogueMix(300, 0.4, 0, true), new JsonObject { ["maxBarlows"] = 4 }, certify: true))),
        ("widest-3000", () => OneAsync("3000 items, 8 purchases, 4 Barlows, 20 overlaps", Recommend, Body(new CatalogueMix(3000), Widest))),
        (
            "widest-1000",
            () => OneAsync("1000 items, 8 purchases, 4 Barlows, 20 overlaps, `enoughStep` 1", Recommend, Body(new CatalogueMix(1000), Widest, Even))),
        ("enough-step-1", () => OneAsync(
            "3000 items without Barlows, 8 purchases, `enoughStep` 1", Recommend,
            Body(new CatalogueMix(3000, 0), new JsonObject { ["maxPurchases"] = 8 }, Even))),
        ("four-telescopes", () => OneAsync(
            "3000 items, `mustInclude` with `mustFrame`, 4 telescopes, 8 purchases", Recommend,
            Body(new CatalogueMix(3000), new JsonObject { ["maxPurchases"] = 8 }, Demanding(), telescopes: 4))),
        (
            "curve-300",
            () => OneAsync(
                "spending curve, 300 items, 8 purchases, 4 Barlows, `enoughStep` 1", "/v1/spending-curves",
                Body(new CatalogueMix(300), Widest, Even, owned: 2))),
        (
            "path-four-telescopes",
            () => OneAsync(
                "buying path, 300 items, 4 telescopes, 8 purchases, 4 Barlows, `enoughStep` 1", "/v1/buying-paths",
                Body(new CatalogueMix(300), Widest, Even, telescopes: 4))),
        ("three-factors-3000", () => OneAsync(
            "3000 items, 12 % Barlows of three factors, `maxBarlows` 2, `enoughStep` 1", Recommend,
            Body(new CatalogueMix(3000, 0.12, 0.04, true), new JsonObject { ["maxBarlows"] = 2 }, Even))),
        ("caller-gone", CallerGoneAsync),
        ("one-processor", OneProcessorAsync),
        ("twenty-curves", TwentyCurvesAsync),
    ];

    /// <summary>A service that was published somewhere may be named; otherwise it is the one built along with the benchmarks.</summary>
    public static TrialStart Start(params (string Key, string Value)[] settings) => new()
    {
        Assembly = Environment.GetEnvironmentVariable("EVENSTEP_TRIAL_SERVICE") ?? Repository.ServiceAssembly,
        Settings = settings,
    };

    /// <summary>A usual telescope and owner, and whatever makes the request heavy.</summary>
    public static string Body(
        CatalogueMix mix, JsonObject? limits = null, JsonObject? preferences = null, int telescopes = 1, int owned = 0, bool certify = false)
    {
        var dice = new Dice(mix.Items, telescopes, 3);
        var draw = new CatalogueDraw(dice);
        var items = draw.Items(mix);
        var allLimits = new JsonObject { ["budget"] = UsualBudget };
        foreach (var (name, value) in limits ?? [])
        {
            allLimits[name] = value?.DeepClone();
        }

        return new JsonObject
        {
            ["telescopes"] = new JsonArray([.. Enumerable.Range(0, telescopes).Select(i => (JsonNode)new JsonObject
            {
                ["apertureMm"] = 203 - (30 * i), ["focalLengthMm"] = 1218 + (150 * i), ["focuserBarrel"] = "2in",
            })]),
            ["owned"] = new JsonArray([.. Enumerable.Range(0, owned).Select(_ => (JsonNode)draw.Eyepiece())]),
            ["catalogue"] = new JsonObject { ["currency"] = "EUR", ["items"] = items },
            ["limits"] = allLimits,
            ["preferences"] = preferences?.DeepClone() ?? new JsonObject(),
            ["explain"] = certify ? new JsonObject { ["certify"] = true } : null,
        }.ToJsonString();
    }

    /// <summary>The same request with another budget, which makes it another request.</summary>
    public static string WithBudget(string body, int budget) => body.Replace(
        string.Create(CultureInfo.InvariantCulture, $"\"budget\":{UsualBudget}"), string.Create(CultureInfo.InvariantCulture, $"\"budget\":{budget}"),
        StringComparison.Ordinal);

    /// <summary>The demo catalogue and no wishes: answered in a millisecond or two. The budget makes them differ.</summary>
    public static string Small(int budget) => $$$"""
        {"telescopes":[{"apertureMm":203,"focalLengthMm":1218,"focuserBarrel":"2in"}],"catalogue":{"id":"demo"},"limits":{"budget":{{{budget}}}}}
        """;

    private static JsonObject Demanding() => new()
    {
        ["mustInclude"] = new JsonArray("item-500", "item-900"),
        ["mustFrame"] = new JsonArray(new JsonObject { ["widthDeg"] = 1.2 }),
    };

    private static async Task<TrialResult> OneAsync(string name, string path, string body)
    {
        using var service = await TrialService.StartAsync(Start(("Evenstep:CertifyShare", "0")));
        return await OneAsync(service, name, path, body);
    }

    private static async Task<TrialResult> OneAsync(TrialService service, string name, string path, string body)
    {
        await using var watch = new MemoryWatch(service, MostMegabytes, LookEvery);
        var started = Stopwatch.GetTimestamp();
        var outcome = await OutcomeAsync(service, path, body);
        var took = Stopwatch.GetElapsedTime(started);
        return new TrialResult(name, took.TotalSeconds, watch.Before, watch.Peak, watch.HasKilled ? "no answer; killed at 4 GB" : outcome);
    }

    private static async Task<string> OutcomeAsync(TrialService service, string path, string body)
    {
        using var patience = new CancellationTokenSource(Patience);
        try
        {
            using var response = await service.PostAsync(path, body, patience.Token);
            return Said((int)response.StatusCode, await response.Content.ReadAsStringAsync(patience.Token));
        }
        catch (OperationCanceledException)
        {
            return "no answer in 30 s";
        }
        catch (HttpRequestException)
        {
            return "the connection broke off";
        }
    }

    private static string Said(int status, string text)
    {
        var answer = JsonSerializer.Deserialize<JsonElement>(text);
        if (status != 200)
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{status}: {(answer.TryGetProperty("title", out var title) ? title.GetString() : text[..Math.Min(80, text.Length)])}");
        }

        var outcome = answer.TryGetProperty("outcome", out var word) ? word.GetString() : "";
        var solver = answer.TryGetProperty("solver", out var one) ? one.GetRawText() : "";
        return string.Create(CultureInfo.InvariantCulture, $"200 {outcome} `{solver}`");
    }

    /// <summary>With one processor there is one place, so that the next request tells when it is free again.</summary>
    private static async Task<TrialResult> CallerGoneAsync()
    {
        using var service = await TrialService.StartAsync(Start(("Evenstep:CertifyShare", "0")) with { Environment = [("DOTNET_PROCESSOR_COUNT", "1")] });
        await using var watch = new MemoryWatch(service, MostMegabytes, LookEvery);
        using var leaving = new CancellationTokenSource(TimeSpan.FromSeconds(2));
        try
        {
            using var response = await service.PostAsync(Recommend, Body(new CatalogueMix(3000), certify: true), leaving.Token);
            return new TrialResult(
                "caller gone while a certificate of 3000 items is made", 0, watch.Before, watch.Peak, "answered before the caller left after 2 s");
        }
        catch (OperationCanceledException)
        {
            var left = Stopwatch.GetTimestamp();
            var outcome = await OutcomeAsync(service, Recommend, Small(100));
            var took = Stopwatch.GetElapsedTime(left);
            return new TrialResult(
                "caller gone while a certificate of 3000 items is made: the next small request", took.TotalSeconds, watch.Before, watch.Peak,
                watch.HasKilled ? "killed at 4 GB" : outcome);
        }
    }

    /// <summary>Every live answer is certified, so that a long certificate is surely under way.</summary>
    private static async Task<TrialResult> OneProcessorAsync()
    {
        using var service = await TrialService.StartAsync(Start(("Evenstep:CertifyShare", "1")) with { Environment = [("DOTNET_PROCESSOR_COUNT", "1")] });
        await using var watch = new MemoryWatch(service, MostMegabytes, LookEvery);
        await OutcomeAsync(service, Recommend, Body(new CatalogueMix(300, 0.4, 0, true), new JsonObject { ["maxBarlows"] = 4 }));
        await Task.Delay(TimeSpan.FromSeconds(2));
        var started = Stopwatch.GetTimestamp();
        var small = await Task.WhenAll(Enumerable.Range(1, 4).Select(number => OutcomeAsync(service, Recommend, Small(100 + number))));
        var took = Stopwatch.GetElapsedTime(started);
        return new TrialResult(
            "one processor: four small requests beside a background certificate", took.TotalSeconds, watch.Before, watch.Peak,
            watch.HasKilled ? "killed at 4 GB" : Counted(small));
    }

    private static async Task<TrialResult> TwentyCurvesAsync()
    {
        using var service = await TrialService.StartAsync(Start(("Evenstep:CertifyShare", "0")));
        await using var watch = new MemoryWatch(service, MostMegabytes, LookEvery);
        using var ends = new CancellationTokenSource();
        var heavy = Enumerable.Range(1, 20).Select(number => KeepAskingAsync(service, number, ends.Token)).ToArray();
        await Task.Delay(TimeSpan.FromSeconds(2));
        var started = Stopwatch.GetTimestamp();
        var small = await Task.WhenAll(Enumerable.Range(1, 20).Select(number => OutcomeAsync(service, Recommend, Small(200 + number))));
        var took = Stopwatch.GetElapsedTime(started);
        var result = new TrialResult(
            "20 small requests beside 20 spending curves", took.TotalSeconds, watch.Before, watch.Peak, watch.HasKilled ? "killed at 4 GB" : Counted(small));
        await ends.CancelAsync();
        await Task.WhenAll(heavy);
        return result;
    }

    private static async Task KeepAskingAsync(TrialService service, int number, CancellationToken cancellationToken)
    {
        var body = Body(new CatalogueMix(300 + number), Widest);
        while (!cancellationToken.IsCancellationRequested && !service.HasExited)
        {
            try
            {
                using var response = await service.PostAsync("/v1/spending-curves", body, cancellationToken);
            }
            catch (Exception failure) when (failure is OperationCanceledException or HttpRequestException)
            {
                return;
            }
        }
    }

    private static string Counted(IEnumerable<string> outcomes) =>
        string.Join(
            "; ",
            outcomes.GroupBy(outcome => outcome.Split(" `")[0]).Select(group => string.Create(CultureInfo.InvariantCulture, $"{group.Count()} × {group.Key}")));
}
