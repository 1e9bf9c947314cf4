using System.Collections.Immutable;
using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks.Problems;

/// <summary>Problems of one kind, drawn as they are asked for: the same number always gives the same problem.</summary>
/// <param name="Items">In each problem's catalogue.</param>
/// <param name="Variant">What is special about them.</param>
/// <param name="Count">Problems for our own engines.</param>
/// <param name="CountForOthers">Problems, the first of them, for the ways to compare with, which take far longer.</param>
internal sealed record ProblemSet(int Items, Variant Variant, int Count, int CountForOthers)
{
    private static readonly ImmutableArray<int> Sizes = [30, 100, 300, 1000, 3000];

    /// <summary>The variants are tried on catalogues of this size.</summary>
    private const int SizeForVariants = 300;
    private const int QuickSizeForVariants = 100;

    public string Name => $"{Items} items, {Variant.Name}";

    /// <summary>Every set: the usual problem in each size, then each variant in one size and, unless quick, in the largest.</summary>
    public static IEnumerable<ProblemSet> All(bool quick) => quick
        ?
        [
            .. Sizes.Select(size => new ProblemSet(size, Variant.Usual, 8, 3)),
            .. Variant.Others.Select(variant => new ProblemSet(QuickSizeForVariants, variant, 6, 3)),
        ]
        :
        [
            .. Sizes.Select(size => new ProblemSet(size, Variant.Usual, 100, 20)),
            .. Variant.Others.Select(variant => new ProblemSet(SizeForVariants, variant, 100, 4)),
            .. Variant.Others.Select(variant => new ProblemSet(Sizes[^1], variant, 20, 0)),
        ];

    public PurchaseProblem Problem(int number) => ProblemDraw.Draw(Items, Variant, number);
}
