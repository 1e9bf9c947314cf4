using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Search;

namespace Evenstep.Planning.Tests.Search;

/// <summary>Against an axis cut into cells, each of which wants a view or does not. All positions are eighths, on which sums are exact.</summary>
public class WantingTests
{
    private const int Cells = 64;
    private const double CellsPerUnit = 8;
    private const int Rounds = 500;
    private const int Steps = 12;

    [Fact]
    public void What_is_left_and_what_is_taken_is_what_the_cells_say()
    {
        var (taken, whole) = (0.0, 0);
        for (var round = 0; round < Rounds; round++)
        {
            var random = new Random(round);
            var cells = Draw(random);
            var wanting = Wanting(cells);
            for (var step = 0; step < Steps; step++)
            {
                var (from, to) = Between(random);
                Assert.Equal(Length(cells), wanting.Length);
                Assert.Equal(Length(cells.AsSpan(from..to)), wanting.LengthIn(Reach(from, to)));
                if (random.Next(2) == 0)
                {
                    var lost = wanting.Take(Reach(from, to));
                    Assert.Equal(Length(cells.AsSpan(from..to)), lost);
                    Array.Clear(cells, from, to - from);
                    taken += lost;
                }

                Assert.All(Enumerable.Range(0, Cells), i => Assert.Equal(cells[i] ? 1 / CellsPerUnit : 0, wanting.LengthIn(Reach(i, i + 1))));
            }

            whole += wanting.Length > 0 ? 0 : 1;
        }

        Assert.True(taken > Rounds && whole > 0, $"{taken} was taken, and everything {whole} times");
    }

    [Fact]
    public void A_point_takes_nothing_and_what_is_beyond_the_ends_takes_what_is_within()
    {
        var wanting = new Wanting();
        wanting.Begin([new Reach(1, 2), new Reach(3, 4)]);
        Assert.Equal(0, wanting.Take(new Reach(1.5, 1.5)));
        Assert.Equal(2, wanting.LengthIn(new Reach(-5, 9)));
        Assert.Equal(1.5, wanting.Take(new Reach(1.5, 9)));
        Assert.Equal(0.5, wanting.Length);
        Assert.Equal(0.5, wanting.Take(new Reach(-5, 9)));
        Assert.Equal(0, wanting.Length);
        Assert.Equal(0, wanting.LengthIn(new Reach(-5, 9)));
    }

    [Fact]
    public void A_copy_is_its_own_and_beginning_again_forgets_what_was_taken()
    {
        var (first, second) = (new Wanting(), new Wanting());
        Reach[] many = [.. Enumerable.Range(0, 20).Select(i => new Reach(2 * i, (2 * i) + 1))];
        first.Begin([.. many]);
        second.CopyFrom(first);
        second.Take(new Reach(0, 10));
        Assert.Equal(20, first.Length);
        Assert.Equal(20, first.LengthIn(new Reach(0, 40)));
        Assert.Equal(15, second.LengthIn(new Reach(0, 40)));
        second.Begin([.. many]);
        Assert.Equal(20, second.LengthIn(new Reach(0, 40)));
    }

    private static bool[] Draw(Random random)
    {
        var cells = new bool[Cells];
        for (var stretch = random.Next(7); stretch > 0; stretch--)
        {
            var (from, to) = Between(random);
            Array.Fill(cells, true, from, to - from);
        }

        return cells;
    }

    private static Wanting Wanting(bool[] cells)
    {
        List<Reach> stretches = [];
        for (var i = 0; i < Cells; i++)
        {
            var isFirst = cells[i] && (i == 0 || !cells[i - 1]);
            if (isFirst)
            {
                var to = i;
                while (to < Cells && cells[to])
                {
                    to++;
                }

                stretches.Add(Reach(i, to));
            }
        }

        var wanting = new Wanting();
        wanting.Begin([.. stretches]);
        return wanting;
    }

    private static double Length(ReadOnlySpan<bool> cells) => cells.Count(true) / CellsPerUnit;

    private static Reach Reach(int from, int to) => new(from / CellsPerUnit, to / CellsPerUnit);

    private static (int From, int To) Between(Random random)
    {
        var (a, b) = (random.Next(Cells + 1), random.Next(Cells + 1));
        return (Math.Min(a, b), Math.Max(a, b));
    }
}
