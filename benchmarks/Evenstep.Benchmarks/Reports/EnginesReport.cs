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

            Invented, frozen problems (fingerprint {Fingerprint.Of(sets)}). Milliseconds, one run a problem, one thread, warm, after all stages; a run ends at the cap of {options.Cap.TotalSeconds} s. A run that was not proved, because of the cap or of its own work limit, counts as longer than every proved one and is shown as `> `. Below 100 problems, p99 is the slowest. "Times the planner" is the median over the problems of this way's time over the shipped planner's for the same problem; our own engines are asked for more problems than the ways to compare with. kB is the median of what a solve allocates on the managed heap; what a solver allocates outside it is not counted.

            - **shipped planner**: what the service calls.
            - **constraint model**: the complete statement in CP-SAT, after reduction.
            - **plain CP-SAT**: the model one would write down first, default parameters, one worker; **MIP**: the same model. They do not carry several telescopes, zooms and reticles. "Too large": more than {Ways.PlainViews.MostArcs:N0} arcs.
            - **exhaustive**: every set, on catalogues of up to 100 items.

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
