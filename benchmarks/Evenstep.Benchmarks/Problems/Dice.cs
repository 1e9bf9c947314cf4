namespace Evenstep.Benchmarks.Problems;

/// <summary>
/// Pseudo-random numbers that are the same on every machine and under every version of the runtime: SplitMix64
/// (G. L. Steele, D. Lea and C. H. Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014).
/// </summary>
internal sealed class Dice
{
    private ulong state;

    /// <summary>Different seeds, or the same in another order, give different numbers.</summary>
    public Dice(params ReadOnlySpan<int> seeds)
    {
        foreach (var seed in seeds)
        {
            state = unchecked(Next() ^ (ulong)seed);
        }
    }

    public bool Chance(double probability) => Fraction() < probability;

    public int Int(int from, int to) => from + (int)(Fraction() * (to - from + 1));

    public double Between(double from, double to) => from + ((to - from) * Fraction());

    public T Pick<T>(params IReadOnlyList<T> choices) => choices[Int(0, choices.Count - 1)];

    private double Fraction() => (Next() >> 11) * (1.0 / (1UL << 53));

    private ulong Next()
    {
        unchecked
        {
            var mixed = state += 0x9E3779B97F4A7C15;
            mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9;
            mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
            return mixed ^ (mixed >> 31);
        }
    }
}
