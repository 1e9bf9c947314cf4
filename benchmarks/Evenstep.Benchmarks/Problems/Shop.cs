using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks.Problems;

/// <summary>Invents catalogues of any size.</summary>
internal static class Shop
{
    private const double SurchargeFor2In = 30;
    private const double ShareOfBarlows = 0.04;
    private const double LargeShareOfBarlows = 0.12;
    private const double ShareOfZooms = 0.04;
    private const int ItemsPerReticle = 100;

    private static readonly double[][] Factors = [[2], [2], [2], [3], [1.5], [1.8], [2.25], [2.5], [5], [1.6, 2.1], [1.5, 2.25]];

    /// <summary>So many items: Barlows, zooms and reticle eyepieces by their shares, the rest eyepieces line by line.</summary>
    /// <param name="size">How many items.</param>
    /// <param name="dice">Draws them.</param>
    /// <param name="manyBarlows">A large share of Barlows, of three factors each: they make most views.</param>
    public static IReadOnlyList<Item> Catalogue(int size, Dice dice, bool manyBarlows = false)
    {
        var barlows = Math.Max(1, (int)(size * (manyBarlows ? LargeShareOfBarlows : ShareOfBarlows)));
        var zooms = Math.Max(1, (int)(size * ShareOfZooms));
        var reticles = Math.Max(1, size / ItemsPerReticle);
        List<Item> items =
        [
            .. Enumerable.Range(1, barlows).Select(n => manyBarlows ? BarlowOfThree($"barlow-{n}", dice) : Barlow($"barlow-{n}", dice)),
            .. Enumerable.Range(1, zooms).Select(n => Zoom($"zoom-{n}", dice)),
            .. Enumerable.Range(1, reticles).Select(n => Reticle($"reticle-{n}", dice)),
        ];
        for (var line = 1; items.Count < size; line++)
        {
            items.AddRange(new Line($"line-{line}", dice).Eyepieces(dice).Take(size - items.Count));
        }

        return items;
    }

    public static Item Barlow(string id, Dice dice)
    {
        var factors = dice.Pick(Factors);
        var barrel = dice.Chance(0.2) ? Barrel.Inch2 : Barrel.Inch125;
        return Item(id, new Barlow([.. factors], barrel), dice.Between(18, 110) + (20 * factors.Length), dice.Between(70, 180), dice);
    }

    private static Item BarlowOfThree(string id, Dice dice)
    {
        var least = Math.Round(dice.Between(1.3, 1.8), 2);
        double[] factors = [least, Math.Round(least * dice.Between(1.2, 1.5), 2), Math.Round(least * dice.Between(1.7, 2.5), 2)];
        var barrel = dice.Chance(0.2) ? Barrel.Inch2 : Barrel.Inch125;
        return Item(id, new Barlow([.. factors], barrel), dice.Between(18, 110) + (20 * factors.Length), dice.Between(70, 180), dice);
    }

    /// <summary>What is for sale, with what no law decides: rounding, stock, and here and there a mass unknown.</summary>
    public static Item Item(string id, Optic optic, double price, double massGrams, Dice dice, string? parfocalGroup = null) =>
        new(id, optic)
        {
            Price = Tidy(price + (optic.Barrel == Barrel.Inch2 ? SurchargeFor2In : 0)),
            MassGrams = dice.Chance(0.95) ? 5 * Math.Round(massGrams / 5) : null,
            InStock = dice.Chance(0.95),
            ParfocalGroup = parfocalGroup,
        };

    /// <summary>Zooms are narrow at the long end and wider at the short one.</summary>
    private static Item Zoom(string id, Dice dice)
    {
        var shortest = Math.Round(dice.Pick(dice.Between(2.8, 4), dice.Between(7, 9.5), dice.Between(7, 9.5), dice.Between(9, 12)), 1);
        var longest = Math.Round(shortest * dice.Between(2, 3), 1);
        var atLongest = dice.Int(36, 50);
        var optic = new Zoom(shortest, longest, atLongest + dice.Int(4, 20), atLongest, Math.Round(dice.Between(10, 19), 1), Barrel.Inch125);
        return Item(id, optic, dice.Between(50, 300), dice.Between(150, 400), dice);
    }

    private static Item Reticle(string id, Dice dice)
    {
        var focalLengthMm = Math.Round(dice.Between(8, 24), 1);
        var optic = new Eyepiece(focalLengthMm, 45, Math.Round(0.8 * focalLengthMm, 1), Barrel.Inch125) { Purpose = EyepiecePurpose.Reticle };
        return Item(id, optic, dice.Between(60, 140), dice.Between(90, 150), dice);
    }

    /// <summary>As shops round: to ten cents below a whole amount, above 200 to one that ends in 9.</summary>
    private static decimal Tidy(double price) => price < 200
        ? (decimal)Math.Round(price) - 0.10m
        : (10 * (decimal)Math.Round(price / 10)) - 1;
}
