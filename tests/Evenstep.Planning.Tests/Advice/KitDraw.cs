using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Tests.Advice;

/// <summary>Random kits, without a plan: of one telescope or two, with eyepieces of many powers and a few Barlows and zooms.</summary>
internal static class KitDraw
{
    /// <param name="seed">The same kit from the same seed.</param>
    /// <param name="owned">How many items are owned.</param>
    /// <param name="bought">How many are bought.</param>
    public static Kit Make(int seed, int owned, int bought)
    {
        var random = new Random(seed);
        var telescopes = random.Next(3) == 0 ? 2 : 1;
        var problem = Some.Problem(owned: [.. Enumerable.Range(0, owned).Select(i => ItemOf(random, $"own-{i}"))]) with
        {
            Telescopes = [.. Enumerable.Range(0, telescopes).Select(t => TelescopeOf(random, t))],
            Preferences = new Preferences { EnoughStep = 1.2 + (0.1 * random.Next(8)) },
            Demands = DemandsOf(random),
        };
        return Kit.Of(problem, [.. Enumerable.Range(0, bought).Select(i => ItemOf(random, $"item-{i}"))]);
    }

    private static TelescopeInUse TelescopeOf(Random random, int t) => Some.InUse(
        Some.Telescope(random.Next(80, 250), random.Next(500, 1600), name: $"telescope {t}"), 20 + random.Next(20), 150 + random.Next(100));

    private static Demands DemandsOf(Random random) => new()
    {
        MustFrame = random.Next(2) == 0 ? [new FramingDemand("nebula", 0.5 + random.NextDouble(), random.Next(2) == 0 ? 0 : null)] : [],
        ReticleLeastPower = random.Next(3) == 0 ? random.Next(50, 200) : null,
    };

    private static Item ItemOf(Random random, string id) => random.Next(10) switch
    {
        0 or 1 => Some.Barlow(1.5 + (0.5 * random.Next(4)), id, price: random.Next(4) * 20),
        2 => Some.Zoom(random.Next(6, 9), random.Next(14, 25), id: id, price: random.Next(4) * 40),
        3 => Some.Reticle(random.Next(8, 14), id),
        _ => Some.Eyepiece(random.Next(4, 33), random.Next(44, 84), random.Next(5, 20), id: id, price: random.Next(5) * 30),
    };
}
