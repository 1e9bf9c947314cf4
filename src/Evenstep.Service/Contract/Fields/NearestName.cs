namespace Evenstep.Service.Contract.Fields;

/// <summary>Finds what somebody who misspelt a name probably meant.</summary>
internal static class NearestName
{
    private const int LongestCompared = 60;

    /// <summary>The most pairs of letters compared for one suggestion: a hostile body may ask for a hundred among thousands.</summary>
    private const int MostPairs = 500_000;

    /// <summary>The known name nearest to the given one, or null if none is near enough to be meant.</summary>
    public static string? To(string given, IEnumerable<string> known)
    {
        if (given.Length is 0 or > LongestCompared)
        {
            return null;
        }

        var pairs = 0;
        var nearest = known.Where(name => Math.Abs(name.Length - given.Length) <= MostEdits(name))
            .TakeWhile(name => (pairs += given.Length * name.Length) <= MostPairs)
            .Select(name => (Name: name, Edits: Edits(given, name)))
            .OrderBy(pair => pair.Edits).ThenBy(pair => pair.Name, StringComparer.Ordinal)
            .FirstOrDefault();
        return nearest.Name is { } found && nearest.Edits <= MostEdits(found) && nearest.Edits < found.Length ? found : null;
    }

    /// <summary>Asks whether that was meant, with a space before it; nothing where nothing is near enough.</summary>
    public static ErrorMessage HintOn(string? given, IEnumerable<string> known) =>
        To(given ?? "", known) is { } nearest ? ErrorMessage.Of("error/hint/nearest", ("nearest", nearest)) : ErrorMessage.Nothing;

    private static int MostEdits(string name) => Math.Max(2, name.Length * 2 / 5);

    /// <summary>How many letters to insert, drop, change or swap with their neighbour; case does not count.</summary>
    private static int Edits(string a, string b)
    {
        var rows = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            for (var j = 0; j <= b.Length; j++)
            {
                rows[i, j] = i == 0 ? j : j == 0 ? i : Cheapest(rows, a, b, i, j);
            }
        }

        return rows[a.Length, b.Length];
    }

    private static int Cheapest(int[,] rows, string a, string b, int i, int j)
    {
        var change = rows[i - 1, j - 1] + (Same(a[i - 1], b[j - 1]) ? 0 : 1);
        var cheapest = Math.Min(change, Math.Min(rows[i - 1, j], rows[i, j - 1]) + 1);
        var swapped = i > 1 && j > 1 && Same(a[i - 1], b[j - 2]) && Same(a[i - 2], b[j - 1]);
        return swapped ? Math.Min(cheapest, rows[i - 2, j - 2] + 1) : cheapest;
    }

    private static bool Same(char a, char b) => char.ToLowerInvariant(a) == char.ToLowerInvariant(b);
}
