using Evenstep.Service.Answering.Health;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Tests.Answering.Metrics;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace Evenstep.Service.Tests.Features.Batches;

/// <summary>A batch over a real connection: both sides talk at the same time, and neither needs memory for the whole.</summary>
[Collection(Alone.Name)]
public sealed class DuplexTests(ListeningService service) : IClassFixture<ListeningService>
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);
    private static readonly int MostAtOnce = 8 * Environment.ProcessorCount;

    [Fact]
    public async Task A_line_is_answered_before_the_next_one_is_sent()
    {
        using var client = await DuplexClient.PostAsync(service.Address, Batch.Path, Batch.MediaType);

        for (var i = 0; i < 5; i++)
        {
            await client.SendAsync(Batch.LineOfItsOwn($"line {i}", i) + "\n");
            Assert.StartsWith($$"""{"id":"line {{i}}","recommendation":""", await client.LineAsync().WaitAsync(Patience), StringComparison.Ordinal);
        }

        await client.SendAsync(Batch.LineOfItsOwn("last", 9));
        await client.EndAsync();
        Assert.StartsWith("""{"id":"last","recommendation":""", await client.LineAsync().WaitAsync(Patience), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_caller_who_leaves_stops_the_work()
    {
        using var own = new Service
        {
            Replace = services => services.AddSingleton(new SolveGate(Environment.ProcessorCount, SchedulerSettings.Usual, new FakeTimeProvider()))
        };
        var address = own.Listen();
        var gate = own.Services.GetRequiredService<SolveGate>();
        await Eventually.TrueAsync(() => own.Services.GetRequiredService<Readiness>().IsReady && gate.InUse == 0);
        await using var full = await FullGate.OfAsync(gate);
        using (var client = await DuplexClient.PostAsync(address, Batch.Path, Batch.MediaType))
        {
            await client.SendAsync(string.Join('\n', Enumerable.Range(0, 100).Select(i => Batch.LineOfItsOwn($"{i}", i))) + "\n");
            await Eventually.TrueAsync(() => gate.Waiting == MostAtOnce);
        }

        await Eventually.TrueAsync(() => gate.Waiting == 0);
    }

    [Fact]
    public async Task Single_requests_are_answered_while_a_batch_has_more_to_do_than_it_can()
    {
        using var client = await DuplexClient.PostAsync(service.Address, Batch.Path, Batch.MediaType);
        var sending = client.SendAsync(string.Join('\n', Enumerable.Range(0, 400).Select(i => Batch.LineOfItsOwn($"{i}", i))) + "\n");
        await client.LineAsync().WaitAsync(Patience);

        using var single = service.CreateClient();
        using var content = new StringContent(Repository.Example("recommendation-spectacles"), System.Text.Encoding.UTF8, "application/json");
        using var answer = await single.PostAsync(new Uri("/v1/recommendations", UriKind.Relative), content).WaitAsync(Patience);

        Assert.True(answer.IsSuccessStatusCode);
        for (var i = 1; i < 400; i++)
        {
            Assert.StartsWith($$"""{"id":"{{i}}",""", await client.LineAsync().WaitAsync(Patience), StringComparison.Ordinal);
        }

        await sending;
    }

    [Fact]
    public async Task Memory_does_not_grow_with_the_number_of_lines()
    {
        using var client = await DuplexClient.PostAsync(service.Address, Batch.Path, Batch.MediaType);
        await PourAsync(client, 2_000);
        var before = GC.GetTotalMemory(forceFullCollection: true);

        await PourAsync(client, 20_000);

        // Were what the lines say kept, or even only a tenth of the answers, this would be more.
        Assert.InRange(GC.GetTotalMemory(forceFullCollection: true) - before, long.MinValue, 2_000_000);
        await client.EndAsync();
    }

    /// <summary>Sends lines while reading the answers.</summary>
    private static async Task PourAsync(DuplexClient client, int lines)
    {
        var sending = Task.Run(async () =>
        {
            foreach (var piece in Enumerable.Range(0, lines).Chunk(100))
            {
                await client.SendAsync(string.Concat(piece.Select(i => Batch.LineOfItsOwn($"{i}", i % 10) + "\n")));
            }
        });
        for (var i = 0; i < lines; i++)
        {
            Assert.StartsWith($$"""{"id":"{{i}}",""", await client.LineAsync().WaitAsync(Patience), StringComparison.Ordinal);
        }

        await sending;
    }
}

/// <summary>The service, listening at a port of the loopback address.</summary>
public sealed class ListeningService : IDisposable
{
    private readonly Service service = new();

    public ListeningService() => Address = service.Listen();

    public Uri Address { get; }

    public IServiceProvider Services => service.Services;

    public HttpClient CreateClient() => service.CreateClient();

    public void Dispose() => service.Dispose();
}

/// <summary>Tests that measure what all tests share, and so run while no other does.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class Alone
{
    public const string Name = "alone";
}
