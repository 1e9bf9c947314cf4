using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using System.Net.Http.Headers;
using System.Text;
using Evenstep.Service.Answering.Health;
using Evenstep.Service.Answering.Metrics;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Tests.Http.OpenApi;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace Evenstep.Service.Tests.Answering.Metrics;

/// <summary>The service with settings and parts of its own, and what it counts. For its scheduler no time passes.</summary>
internal sealed class WatchedService : WebApplicationFactory<Program>
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly (string Key, string Value)[] settings;
    private readonly Action<IServiceCollection> replace;
    private readonly DataFolder data = new();
    private readonly MeterListener listener = new();
    private readonly ConcurrentDictionary<string, long> counts = new();

    public WatchedService(Action<IServiceCollection>? replace = null, params (string Key, string Value)[] settings)
    {
        this.settings = settings;
        this.replace = replace ?? (_ => { });

        // The warm-up takes a slot of the gate.
        SpinWait.SpinUntil(() => Get<Readiness>().IsReady && Get<SolveGate>().InUse == 0, Patience);
        Listen(Get<IMeterFactory>());
    }

    /// <summary>How many solves were made for callers.</summary>
    public long Solves => CountOf(ServiceMeter.SolveDuration);

    public T Get<T>()
        where T : notnull => Services.GetRequiredService<T>();

    /// <summary>How much was counted, under a tag if the instrument has any.</summary>
    public long CountOf(string instrument, string tag = "") => counts.GetValueOrDefault($"{instrument} {tag}");

    public Task<Answer> RecommendAsync(string body, CancellationToken cancellationToken = default) =>
        PostAsync("/v1/recommendations", body, cancellationToken: cancellationToken);

    public async Task<Answer> PostAsync(string path, string body, string mediaType = "application/json", CancellationToken cancellationToken = default)
    {
        using var content = new StringContent(body, Encoding.UTF8, new MediaTypeHeaderValue(mediaType));
        using var client = CreateClient();
        using var response = await client.PostAsync(new Uri(path, UriKind.Relative), content, cancellationToken);
        return await Answer.OfAsync(response);
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        data.Configure(builder);
        builder.ConfigureServices(services => services.AddSingleton<IStartupFilter, DocumentGuard>());
        foreach (var (key, value) in settings)
        {
            builder.UseSetting(key, value);
        }

        builder.ConfigureTestServices(services =>
        {
            services.AddSingleton(new SolveGate(Environment.ProcessorCount, SchedulerSettings.Usual, new FakeTimeProvider()));
            replace(services);
        });
    }

    protected override void Dispose(bool disposing)
    {
        listener.Dispose();
        base.Dispose(disposing);
        data.Dispose();
    }

    private void Listen(IMeterFactory ownFactory)
    {
        listener.InstrumentPublished = (instrument, listening) =>
        {
            // Other services run in this process at the same time.
            if (instrument.Meter.Scope == ownFactory && instrument.Meter.Name == ServiceMeter.Name)
            {
                listening.EnableMeasurementEvents(instrument);
            }
        };
        listener.SetMeasurementEventCallback<long>((instrument, count, tags, _) => Add(instrument, tags, count));
        listener.SetMeasurementEventCallback<double>((instrument, _, tags, _) => Add(instrument, tags, 1));
        listener.Start();
    }

    private void Add(Instrument instrument, ReadOnlySpan<KeyValuePair<string, object?>> tags, long count) =>
        counts.AddOrUpdate($"{instrument.Name} {(tags.IsEmpty ? "" : tags[0].Value)}", count, (_, sum) => sum + count);
}
