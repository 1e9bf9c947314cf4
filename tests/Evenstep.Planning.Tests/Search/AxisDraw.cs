using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;
using Evenstep.Planning.Tests.Oracle;

namespace Evenstep.Planning.Tests.Search;

/// <summary>An axis, and reaches that views might have on it.</summary>
internal sealed record AxisDraw(double Length, double Enough, Reach[] Reaches)
{
    private const int Parts = 8;

    public Shore Shore => new(Length, Enough, 1 / Length);

    /// <summary>Whether the positions are eighths of the axis, on which sums are exact.</summary>
    private bool IsExact { get; init; }

    /// <summary>
    /// Half of the axes hold their reaches to eighths, so that they touch, coincide, contain one another and stand at the
    /// ends; on the others they lie anywhere. Some have no reach at all.
    /// </summary>
    public static IEnumerable<AxisDraw> Many(int count, int mostReaches) =>
        Enumerable.Range(0, count).Select(seed => Make(new Random(seed), seed % 2 == 0, mostReaches));

    public Islands Islands(params IEnumerable<Reach> reaches)
    {
        Reach[] all = [.. reaches];
        var islands = new Islands(Shore);
        foreach (var reach in all)
        {
            islands.Add(reach);
        }

        return islands;
    }

    public LadderFigures Figures(params IEnumerable<Reach> reaches) => LadderFigures.Of(reaches, [], Length, new MismatchLimits(Enough, Enough));

    /// <summary>Another reach on the same kind of positions.</summary>
    public Reach Another(Random random)
    {
        var from = Position(random);
        return random.Next(3) > 0 ? new Reach(from, from) : Between(from, Position(random));
    }

    /// <summary>A mismatch to keep to: on exact axes a sixteenth of the length or more of them, so that gaps just keep to it.</summary>
    public double Half(Random random) =>
        IsExact ? Length * random.Next(1, Parts) / (2 * Parts) : Length * (0.02 + (0.6 * random.NextDouble()));

    private static AxisDraw Make(Random random, bool isExact, int mostReaches)
    {
        var dice = new Dice(random);
        var length = isExact ? dice.Pick(1.0, 2, 4) : dice.Between(0.3, 4);
        var enough = isExact ? length * dice.Int(0, 4) / (2 * Parts) : length * dice.Between(0, 0.3);
        var bare = new AxisDraw(length, enough, []) { IsExact = isExact };
        return bare with { Reaches = [.. Enumerable.Range(0, dice.Int(0, mostReaches)).Select(_ => bare.Another(random))] };
    }

    private double Position(Random random) =>
        IsExact ? Length * random.Next(0, Parts + 1) / Parts : Math.Clamp(random.NextDouble() * 1.1, 0, 1) * Length;

    private static Reach Between(double a, double b) => new(Math.Min(a, b), Math.Max(a, b));
}
