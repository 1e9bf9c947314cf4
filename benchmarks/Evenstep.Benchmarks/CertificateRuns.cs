using System.Collections.Immutable;
using System.Diagnostics;
using Evenstep.Benchmarks.Problems;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Solving;

namespace Evenstep.Benchmarks;

/// <summary>What the model said of the search's plans for one size of catalogue.</summary>
internal sealed record CertificateResults(int Items, int Agreed, int Disagreed, int Undecided, ImmutableArray<double> SortedMs);

/// <summary>Plans problems of several sizes and has the model confirm each plan.</summary>
internal static class CertificateRuns
{
    private const double WorkLimit = 10;

    private static readonly int[] Sizes = [100, 200, 300];

    private static readonly Variant[] Variants = [Variant.Usual, .. Variant.Others];

    public static ImmutableArray<CertificateResults> Run(Options options) => [.. Sizes.Select(size => Run(size, options.Quick ? 40 : 700))];

    private static CertificateResults Run(int items, int count)
    {
        var (agreed, disagreed, undecided) = (0, 0, 0);
        List<double> times = [];
        for (var number = 1; number <= count; number++)
        {
            Progress.Tell($"certificates, {items} items, {number} of {count}");
            var problem = ProblemDraw.Draw(items, Variants[number % Variants.Length], number);
            var plan = Planner.Solve(problem, new WorkBudget(WorkLimit));
            if (plan.Values is null)
            {
                continue;
            }

            var clock = Stopwatch.GetTimestamp();
            var certified = Certifier.Certify(problem, plan, new WorkBudget(WorkLimit));
            times.Add(Stopwatch.GetElapsedTime(clock).TotalMilliseconds);
            (agreed, disagreed, undecided) = certified switch
            {
                true => (agreed + 1, disagreed, undecided),
                false => (agreed, disagreed + 1, undecided),
                _ => (agreed, disagreed, undecided + 1),
            };
        }

        return new CertificateResults(items, agreed, disagreed, undecided, [.. times.Order()]);
    }
}
