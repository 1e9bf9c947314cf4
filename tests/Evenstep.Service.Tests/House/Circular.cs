namespace Evenstep.Service.Tests.House;

/// <summary>Finds what uses itself by way of others.</summary>
internal static class Circular
{
    /// <summary>The strongly connected groups of more than one, by Tarjan's algorithm (SIAM Journal on Computing 1, 1972).</summary>
    public static List<string[]> Groups(ILookup<string, string> uses)
    {
        var index = new Dictionary<string, int>(StringComparer.Ordinal);
        var low = new Dictionary<string, int>(StringComparer.Ordinal);
        var path = new Stack<string>();
        var groups = new List<string[]>();
        foreach (var user in uses)
        {
            if (!index.ContainsKey(user.Key))
            {
                Visit(user.Key);
            }
        }

        return groups;

        void Visit(string node)
        {
            index[node] = low[node] = index.Count;
            path.Push(node);
            foreach (var used in uses[node])
            {
                if (!index.TryGetValue(used, out var seen))
                {
                    Visit(used);
                    low[node] = Math.Min(low[node], low[used]);
                }
                else if (path.Contains(used))
                {
                    low[node] = Math.Min(low[node], seen);
                }
            }

            if (low[node] == index[node])
            {
                Close(node);
            }
        }

        void Close(string node)
        {
            var group = new List<string>();
            do
            {
                group.Add(path.Pop());
            }
            while (group[^1] != node);
            if (group.Count > 1)
            {
                groups.Add([.. group.Order(StringComparer.Ordinal)]);
            }
        }
    }
}
