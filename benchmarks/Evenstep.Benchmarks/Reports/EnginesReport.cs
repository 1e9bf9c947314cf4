using System.Globalization;
using Evenstep.Benchmarks.Problems;

namespace Evenstep.Benchmarks.Reports;

/// <summary>The part of the report on ways of solving.</summary>
internal static class EnginesReport
{
    public static string Of(IReadOnlyCollection<Measurement> measurements, Options options)
    {
        ProblemSet[] sets = [.. ProblemSet.All(options.Quick)];
        var times = new TimesTable(measurements.ToLookup(run => (run.Set, run.Way)));
        return string.Create(CultureInfo.InvariantCulture, $"""
            ## Ways of solving

            Invented, frozen problems (fingerprint {Fingerprint.Of(sets)}), all of one telescope and four purchases unless said. Milliseconds, one run a
            problem, one thread, warm, all stages. Every way works on the same problem before the next problem's turn.

            - Not every way is asked for every problem: our own engines for up to {sets.Max(set => set.Count)}, the others for the first
              {sets.Max(set => set.CountForOthers)} at most, and a way that has spent {options.CapPerSet.TotalSeconds:N0} s on a set for no more of it.
              Below 100 problems, p99 is the slowest.
            - A run that was given up, at the cap of {options.Cap.TotalSeconds:N0} s or at its own work limit, counts as longer than every proved one and is
              shown as `> ` the time it had taken. Not every way stops at once when told to.
            - "Times the planner": the median of this way's time over the shipped planner's for the same problem, over the problems that the planner proved.
            - "kB": the median of what a solve allocates on the managed heap. What a solver allocates outside it is not counted.

            The ways:

            - **shipped planner**: what the service calls.
            - **constraint model**: the complete statement in CP-SAT, after reduction.
            - **plain CP-SAT**: the model that one would write down first, with default parameters and one worker. **MIP**: the same model for two other
              solvers. They do not carry several telescopes, zooms and reticles. "Too large": more than {Ways.PlainViews.MostArcs:N0} steps from view to view;
              not tried.
            - **exhaustive**: every set, on catalogues of up to {Ways.ExhaustiveWay.MostItems} items.

            ### By size of the catalogue

            {times.Of(sets.Where(set => set.Variant == Variant.Usual))}
            ### By what is asked

            {times.Of(sets.Where(set => set.Variant != Variant.Usual))}
            ### Do they agree?

            Every two ways that both proved their answer to a problem, by the first stage in which they differ.

            {new Agreement(measurements)}
            """);
    }
}
