namespace Evenstep.Service.Answering.Pictures;

/// <summary>Where a label goes.</summary>
/// <param name="Row">From 0.</param>
/// <param name="Centre">The middle of it, in the picture's units.</param>
internal readonly record struct LabelPlace(int Row, double Centre);

/// <summary>
/// Places labels in rows, so that none touches another: each goes into the first row where there is room for it, as near to
/// what it labels as the edges let it. Whoever is placed first has the first choice.
/// </summary>
internal sealed class LabelRows(double left, double right)
{
    private const double Gap = 4;

    private readonly List<List<(double From, double To)>> rows = [];

    /// <summary>How many rows there are so far.</summary>
    public int Count => rows.Count;

    /// <summary>Places a label no wider than from edge to edge; null if there is no room in the rows it may be in.</summary>
    /// <param name="wanted">Where its middle would best be.</param>
    /// <param name="width">How wide it is.</param>
    /// <param name="mostRows">The rows it may be in. Without a limit there is always room.</param>
    public LabelPlace? Place(double wanted, double width, int mostRows = int.MaxValue)
    {
        var centre = Math.Max(left + (width / 2), Math.Min(right - (width / 2), wanted));
        var (from, to) = (centre - (width / 2), centre + (width / 2));
        var row = rows.FindIndex(taken => taken.TrueForAll(other => to + Gap <= other.From || from >= other.To + Gap));
        row = row < 0 ? rows.Count : row;
        if (row >= mostRows)
        {
            return null;
        }

        Take(row, from, to);
        return new LabelPlace(row, centre);
    }

    private void Take(int row, double from, double to)
    {
        if (row == rows.Count)
        {
            rows.Add([]);
        }

        rows[row].Add((from, to));
    }
}
