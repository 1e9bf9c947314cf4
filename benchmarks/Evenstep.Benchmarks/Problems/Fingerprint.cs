using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks.Problems;

/// <summary>A short hash of problems: reports with the same one measured the same problems.</summary>
internal static class Fingerprint
{
    private const int Bytes = 6;

    public static string Of(IEnumerable<ProblemSet> sets)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var text in sets.SelectMany(set => Enumerable.Range(0, set.Count).Select(set.Problem)).SelectMany(Lines))
        {
            hash.AppendData(Encoding.UTF8.GetBytes(text));
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset().AsSpan(0, Bytes));
    }

    private static IEnumerable<string> Lines(PurchaseProblem problem) =>
    [
        .. problem.Telescopes.Select(one => Text($"{one.Telescope}")),
        .. problem.Owned.Concat(problem.Catalogue).Select(item => Text($"{item.Id} {item.Optic} {Factors(item)} {item.Price} {item.MassGrams} {item.InStock}")),
        Text($"{problem.Limits} {problem.Preferences.Prefer} {problem.Demands.ReticleLeastPower}"),
        .. problem.Demands.MustInclude,
        .. problem.Demands.MustFrame.Select(framing => Text($"{framing}")),
    ];

    private static string Factors(Item item) =>
        string.Join(' ', ((item.Optic as Barlow)?.Factors ?? []).Select(factor => Text($"{factor}")));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
