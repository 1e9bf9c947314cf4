using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>
/// Over all telescopes, at most so many pairs of views overlap where at least one of the two needs a bought item.
/// </summary>
internal static class NoOverlap
{
    public static void Keep(PurchaseModel model)
    {
        if (model.Problem.Limits.AllowedOverlaps == 0)
        {
            Forbid(model);
        }
        else
        {
            Count(model);
        }
    }

    /// <summary>Choices that overlap together are not bought together. Those that share their first choices share a constraint.</summary>
    private static void Forbid(PurchaseModel model)
    {
        var table = model.Space.Overlaps;
        foreach (var shared in table.Pairs.Keys.Where(together => !HoldsForbiddenPair(table, together)).GroupBy(together => together.Indices[..^1], SameIndices.Instance))
        {
            var last = shared.Select(together => model.Chosen(model.Space.Choices[together.Indices[^1]]).Not());
            var constraint = model.Cp.AddBoolAnd(last);
            if (shared.Key.Length > 0)
            {
                constraint.OnlyEnforceIf([.. shared.Key.Select(index => model.Chosen(model.Space.Choices[index]))]);
            }
        }
    }

    /// <summary>Three or four choices of which two exclude one another already need no constraint of their own.</summary>
    private static bool HoldsForbiddenPair(OverlapTable table, Together together)
    {
        var indices = together.Indices;
        return indices.Length > 2
            && indices.Any(a => indices.Any(b => a < b && table.Pairs.ContainsKey(new Together(a, b))));
    }

    private static void Count(PurchaseModel model)
    {
        List<ILiteral> happens = [];
        List<long> pairs = [];
        foreach (var (together, count) in model.Space.Overlaps.Pairs)
        {
            var chosen = together.Indices.Select(index => model.Chosen(model.Space.Choices[index])).ToArray();
            var all = chosen[0];
            if (chosen.Length > 1)
            {
                all = model.Cp.NewBoolVar("");
                model.Cp.AddBoolOr(chosen.Select(literal => literal.Not()).Append(all));
            }

            happens.Add(all);
            pairs.Add(count);
        }

        model.OverlapCount = LinearExpr.WeightedSum(happens, pairs);
        model.Cp.Add(model.OverlapCount <= model.Problem.Limits.AllowedOverlaps);
    }

    private sealed class SameIndices : IEqualityComparer<int[]>
    {
        public static readonly SameIndices Instance = new();

        public bool Equals(int[]? x, int[]? y) => x.AsSpan().SequenceEqual(y);

        public int GetHashCode(int[] indices) => indices.Aggregate(indices.Length, HashCode.Combine);
    }
}
