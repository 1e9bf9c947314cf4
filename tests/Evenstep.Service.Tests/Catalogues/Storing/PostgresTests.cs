using System.Diagnostics;
using Evenstep.Service.Answering.Health;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Tests.Answering.Metrics;
using Microsoft.Extensions.DependencyInjection;
using Xunit.Abstractions;

namespace Evenstep.Service.Tests.Catalogues.Storing;

/// <summary>Catalogues in PostgreSQL, shared by several instances.</summary>
[Collection(nameof(Postgres))]
public sealed class PostgresTests(Postgres postgres, ITestOutputHelper output)
{
    private const string Path = "/v1/catalogues/shop";

    public static TheoryData<string> Behaviour => StoreBehaviour.Names;

    [PostgresTheory]
    [MemberData(nameof(Behaviour))]
    public async Task It_does_what_every_store_does(string name)
    {
        using var store = new PostgresStore(postgres.NewDatabase());
        await store.PrepareAsync(CancellationToken.None);

        await StoreBehaviour.CheckAsync(name, store);
    }

    [PostgresFact]
    public async Task Instances_that_start_together_make_the_tables_once()
    {
        var database = postgres.NewDatabase();
        CatalogueStore[] stores = [.. Enumerable.Range(0, 4).Select(_ => new PostgresStore(database))];

        await Task.WhenAll(stores.Select(store => store.PrepareAsync(CancellationToken.None)));

        Assert.All(stores, store => store.Dispose());
    }

    [PostgresFact]
    public async Task Another_instance_sees_a_change_and_agrees_on_its_version()
    {
        const int Changes = 5;
        var database = postgres.NewDatabase();
        await using Service here = On(database), there = On(database);
        await Eventually.TrueAsync(() => IsReady(here) && IsReady(there));
        List<TimeSpan> delays = [];
        for (var change = 1; change <= Changes; change++)
        {
            var stored = await here.SendAsync(HttpMethod.Put, Path, Wares.Json(change));
            delays.Add(await SeenAfterAsync(there, answer => answer.ETag == stored.ETag));
            Assert.Equal((await here.GetAsync(Path)).Body, (await there.GetAsync(Path)).Body);

            var patched = await there.SendAsync(
                HttpMethod.Patch, $"{Path}/items/e-6", $$"""{ "price": {{change}} }""", "application/merge-patch+json", ("If-Match", stored.ETag!));
            delays.Add(await SeenAfterAsync(here, answer => answer.ETag == patched.ETag));

            Assert.Equal(204, (await here.SendAsync(HttpMethod.Delete, Path)).Status);
            delays.Add(await SeenAfterAsync(there, answer => answer.Status == 404));
        }

        // Measured, not asserted: a machine that does much else besides may hold any of them up.
        output.WriteLine(
            FormattableString.Invariant(
                $"seen after {delays.Average(one => one.TotalMilliseconds):0} ms on average, {delays.Max().TotalMilliseconds:0} ms at most"));
    }

    [PostgresFact]
    public async Task A_change_of_another_instance_is_respected_before_it_is_seen()
    {
        var database = postgres.NewDatabase();
        await using Service here = On(database), there = On(database);

        for (var price = 1; price <= 20; price++)
        {
            var stored = await here.SendAsync(HttpMethod.Put, Path, Wares.Json(price));
            Assert.Equal(
                412, (await there.SendAsync(HttpMethod.Put, Path, Wares.Json(99), headers: ("If-Match", $"\"{Wares.Catalogue(price - 1).Version}\""))).Status);
            Assert.Equal(200, (await there.SendAsync(HttpMethod.Put, Path, Wares.Json(price + 0.5m), headers: ("If-Match", stored.ETag!))).Status);
        }
    }

    [PostgresFact]
    public async Task While_the_database_is_away_reads_go_on_and_writes_are_put_off()
    {
        await using var service = On(postgres.NewDatabase());
        await Eventually.TrueAsync(() => IsReady(service));
        var stored = await service.SendAsync(HttpMethod.Put, Path, Wares.Json());
        postgres.Stop();
        try
        {
            var refused = await service.SendAsync(HttpMethod.Put, Path, Wares.Json(50));
            Assert.Equal((503, "2"), (refused.Status, refused.RetryAfter));
            Assert.Equal("/problems/storage-away", refused.Problem.Type);
            Assert.Equal(503, (await service.SendAsync(HttpMethod.Delete, Path)).Status);
            Assert.Equal(stored.ETag, (await service.GetAsync(Path)).ETag);
            var answer = await service.PostAsync(
                "/v1/recommendations", """{ "telescopes": [ { "id": "reef-150" } ], "catalogue": { "id": "shop" }, "limits": { "budget": 90 } }""");
            Assert.Equal(200, answer.Status);
            Assert.Equal(200, (await service.GetAsync("/health/ready")).Status);
        }
        finally
        {
            postgres.Start();
        }

        await Eventually.TrueAsync(async () => (await service.SendAsync(HttpMethod.Put, Path, Wares.Json(50))).Status == 200);
    }

    [PostgresFact]
    public async Task A_database_that_does_not_answer_is_reported_and_reads_go_on()
    {
        await using var service = On(postgres.NewDatabase() + ";Command Timeout=1;Cancellation Timeout=-1;Timeout=1");
        await Eventually.TrueAsync(() => IsReady(service));
        var stored = await service.SendAsync(HttpMethod.Put, Path, Wares.Json());
        postgres.Freeze();
        try
        {
            var refused = await service.SendAsync(HttpMethod.Put, Path, Wares.Json(50));
            Assert.Equal((503, "/problems/storage-away"), (refused.Status, refused.Problem.Type));
            Assert.Equal(stored.ETag, (await service.GetAsync(Path)).ETag);
        }
        finally
        {
            postgres.Thaw();
        }

        await Eventually.TrueAsync(async () => (await service.SendAsync(HttpMethod.Put, Path, Wares.Json(50))).Status == 200);
    }

    [PostgresFact]
    public async Task A_service_that_starts_without_its_database_waits_for_it()
    {
        var database = postgres.NewDatabase();
        await using (var before = On(database))
        {
            await before.SendAsync(HttpMethod.Put, Path, Wares.Json());
        }

        postgres.Stop();
        Service service;
        try
        {
            service = new Service(null, ("ConnectionStrings:Evenstep", database)) { Waits = false };
            Assert.Equal(200, (await service.GetAsync("/v1/catalogues/demo")).Status);
            Assert.Equal(503, (await service.GetAsync(Path)).Status);
            Assert.Equal(503, (await service.GetAsync("/v1/catalogues")).Status);
            Assert.Equal(503, (await service.GetAsync("/health/ready")).Status);
        }
        finally
        {
            postgres.Start();
        }

        await using (service)
        {
            await Eventually.TrueAsync(() => IsReady(service));
            Assert.Equal($"\"{Wares.Catalogue().Version}\"", (await service.GetAsync(Path)).ETag);
        }
    }

    private static Service On(string database) => new(null, ("ConnectionStrings:Evenstep", database));

    private static bool IsReady(Service service) => service.Services.GetRequiredService<Readiness>().IsReady;

    private static async Task<TimeSpan> SeenAfterAsync(Service service, Func<Answer, bool> sees)
    {
        var since = Stopwatch.GetTimestamp();
        await Eventually.TrueAsync(async () => sees(await service.GetAsync(Path)));
        return Stopwatch.GetElapsedTime(since);
    }
}
