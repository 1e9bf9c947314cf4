namespace Evenstep.Planning.Tests.Oracle;

internal sealed class Dice(Random random)
{
    public Random Random => random;

    public bool Chance(double probability) => random.NextDouble() < probability;

    public int Int(int from, int to) => random.Next(from, to + 1);

    public double Between(double from, double to) => from + ((to - from) * random.NextDouble());

    public T Pick<T>(params IReadOnlyList<T> choices) => choices[random.Next(choices.Count)];

    public T Weighted<T>(params IReadOnlyList<(int Weight, T Value)> choices)
    {
        int left = random.Next(choices.Sum(choice => choice.Weight));
        foreach ((int weight, T value) in choices)
        {
            left -= weight;
            if (left < 0)
            {
                return value;
            }
        }

        throw new InvalidOperationException("The weights must be positive.");
    }
}
