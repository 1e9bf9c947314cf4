using System.Globalization;
using System.Text;
using Evenstep.Service.Catalogues.Content;
using Xunit.Abstractions;

namespace Evenstep.Service.Tests.Catalogues.Storing;

/// <summary>The service is killed in the middle of changes, again and again.</summary>
public sealed class KillTests(ITestOutputHelper output)
{
    private const string Path = "/v1/catalogues/shop";
    private const string Variable = "EVENSTEP_KILLS";
    private const int UsualKills = 4;
    private const int LongestLifeMs = 600;
    private const int Seed = 20_261_125;

    /// <summary>What is promised, on a machine that does nothing else: the recorded run is for such a one, and nothing else asserts a time.</summary>
    private static readonly TimeSpan? Ready = Environment.GetEnvironmentVariable(Variable) is null ? null : TimeSpan.FromSeconds(3);

    private static readonly int Kills =
        int.TryParse(Environment.GetEnvironmentVariable(Variable), NumberStyles.None, CultureInfo.InvariantCulture, out var kills)
            ? kills
            : UsualKills;

    [Fact]
    public async Task Nothing_acknowledged_is_lost_and_nothing_is_torn()
    {
        using var data = new DataFolder();
        var dice = new Random(Seed);
        var (acknowledged, changes, inFlightStored) = (0, 0, 0);
        List<TimeSpan> starts = [];
        for (var kill = 0; kill <= Kills; kill++)
        {
            var (service, took) = await ServiceProcess.StartAsync(data.Path);
            using var killed = service;
            starts.Add(took);
            if (kill > 0)
            {
                var found = await FindAsync(service, acknowledged);
                inFlightStored += found - acknowledged;
                acknowledged = found;
            }

            var killing = KillAfterAsync(service, TimeSpan.FromMilliseconds(dice.Next(LongestLifeMs)));
            var before = acknowledged;
            acknowledged = await ChangeUntilKilledAsync(service, acknowledged);
            changes += acknowledged - before;
            await killing;
        }

        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{Kills} kills, {changes} changes acknowledged, {inFlightStored} stored without an answer; " +
            $"ready after {starts.Average(one => one.TotalSeconds):0.00} s on average, {starts.Max().TotalSeconds:0.00} s at most"));
        Assert.InRange(changes, 1, int.MaxValue);
        if (Ready is { } ready)
        {
            Assert.InRange(starts.Max(), TimeSpan.Zero, ready);
        }
    }

    /// <summary>The number of the change that is stored: the one acknowledged last, or the one that was on its way.</summary>
    private static async Task<int> FindAsync(ServiceProcess service, int acknowledged)
    {
        var found = await service.SendAsync(HttpMethod.Get, Path);
        if (acknowledged == 0 && found!.Status == 404)
        {
            return 0;
        }

        Assert.Equal($"\"{CatalogueContent.VersionOf(Encoding.UTF8.GetBytes(found!.Body))}\"", found.ETag);
        return Assert.Single([acknowledged, acknowledged + 1], number => found.Body == BodyOf(number));
    }

    /// <summary>Makes changes, one after another, by PUT and by PATCH; returns the last one that was acknowledged.</summary>
    private static async Task<int> ChangeUntilKilledAsync(ServiceProcess service, int acknowledged)
    {
        while (true)
        {
            var next = acknowledged + 1;
            var answer = next == 1 || next % 3 == 0
                ? await service.SendAsync(HttpMethod.Put, Path, BodyOf(next))
                : await service.SendAsync(HttpMethod.Patch, $"{Path}/items", $$"""{ "id": "e-0", "price": {{next}} }""", "application/x-ndjson");
            if (answer is null)
            {
                return acknowledged;
            }

            Assert.True(answer.Status is 200 or 201, answer.Body);
            acknowledged = next;
        }
    }

    private static async Task KillAfterAsync(ServiceProcess service, TimeSpan life)
    {
        await Task.Delay(life);
        service.Kill();
    }

    /// <summary>Half a megabyte, which no single write could store.</summary>
    private static string BodyOf(int number) => Encoding.UTF8.GetString(Wares.Read(Wares.Large(items: 200, attributes: 5, firstPrice: number)).Content.Span);
}
