using System.Collections.Immutable;
using System.Diagnostics;
using Evenstep.Benchmarks.Problems;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving;

namespace Evenstep.Benchmarks;

/// <summary>What the model said of the search's plans for one kind of catalogue.</summary>
/// <param name="Name">Of the kind.</param>
/// <param name="Agreed">Plans confirmed.</param>
/// <param name="Disagreed">Plans refuted.</param>
/// <param name="Undecided">Plans whose budget ended first.</param>
/// <param name="Refuted">False claims refuted.</param>
/// <param name="Believed">False claims confirmed.</param>
/// <param name="Doubted">False claims left undecided.</param>
/// <param name="PeakMb">The most memory that the process has held by the end of it.</param>
/// <param name="SortedMs">What each plan took to be confirmed.</param>
internal sealed record CertificateResults(
    string Name, int Agreed, int Disagreed, int Undecided, int Refuted, int Believed, int Doubted, double PeakMb, ImmutableArray<double> SortedMs);

/// <summary>Plans problems of several sizes, has the model confirm each plan, and makes false claims of it.</summary>
internal sealed class CertificateRuns
{
    private const double SearchLimit = 10;
    private const double BytesPerMb = 1e6;

    private static readonly int[] Sizes = [100, 300, 1000, 3000];

    private static readonly bool[] FewAndMany = [false, true];

    private static readonly Variant[] Variants = [Variant.Usual, .. Variant.Others];

    private readonly List<double> times = [];
    private readonly int[] verdicts = new int[3];
    private readonly int[] verdictsOnFalseClaims = new int[3];

    private CertificateRuns()
    {
    }

    public static ImmutableArray<CertificateResults> Run(Options options) =>
    [
        .. from size in Sizes
           from manyBarlows in FewAndMany
           select new CertificateRuns().Run(size, manyBarlows, CountOf(size, options.Quick)),
    ];

    private static int CountOf(int size, bool quick) => quick ? 16 : size <= 300 ? 320 : size == 1000 ? 96 : 48;

    private CertificateResults Run(int items, bool manyBarlows, int count)
    {
        var name = $"{items}{(manyBarlows ? ", many Barlows" : "")}";
        for (var number = 1; number <= count; number++)
        {
            Progress.Tell($"certificates, {name}, {number} of {count}");
            var problem = ProblemDraw.Draw(items, Variants[number % Variants.Length] with { ManyBarlows = manyBarlows }, number);
            var plan = Planner.Solve(problem, new WorkBudget(SearchLimit));
            if (plan is { Values: not null, IsProved: true })
            {
                Certify(problem, plan);
            }
        }

        using var process = Process.GetCurrentProcess();
        return new CertificateResults(
            name,
            verdicts[0],
            verdicts[1],
            verdicts[2],
            verdictsOnFalseClaims[1],
            verdictsOnFalseClaims[0],
            verdictsOnFalseClaims[2],
            process.PeakWorkingSet64 / BytesPerMb,
            [.. times.Order()]);
    }

    private void Certify(PurchaseProblem problem, Plan plan)
    {
        var clock = Stopwatch.GetTimestamp();
        verdicts[Verdict(problem, plan)]++;
        times.Add(Stopwatch.GetElapsedTime(clock).TotalMilliseconds);
        foreach (var (claimedOf, claim) in FalseClaims.Of(problem, plan))
        {
            verdictsOnFalseClaims[Verdict(claimedOf, claim)]++;
        }
    }

    /// <summary>0 for confirmed, 1 for refuted, 2 for undecided.</summary>
    private static int Verdict(PurchaseProblem problem, Plan plan) =>
        Certifier.Certify(problem, plan, new WorkBudget(WorkLimits.Usual)) switch { true => 0, false => 1, null => 2 };
}
