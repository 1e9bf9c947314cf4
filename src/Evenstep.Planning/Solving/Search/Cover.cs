using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>
/// How good the views of a set are, by a <see cref="QualityMeasure"/>: for each telescope and level of quality, what of it
/// still wants a view so good. Kept up to date from view to view: what a view covers only shrinks as others are added.
/// </summary>
internal sealed class Cover
{
    private readonly QualityMeasure measure;
    private readonly Wanting[] wanting;

    public Cover(QualityMeasure measure, int telescopes)
    {
        this.measure = measure;
        wanting = [.. Enumerable.Range(0, telescopes * measure.Levels.Length).Select(_ => new Wanting())];
        Clear();
    }

    /// <summary>The measure of what is covered.</summary>
    public double Quality { get; private set; }

    public void Clear()
    {
        Quality = 0;
        for (var i = 0; i < wanting.Length; i++)
        {
            wanting[i].Begin(measure.WantingIn(i / measure.Levels.Length));
        }
    }

    public void CopyFrom(Cover other)
    {
        Quality = other.Quality;
        for (var i = 0; i < wanting.Length; i++)
        {
            wanting[i].CopyFrom(other.wanting[i]);
        }
    }

    public void Add(in Sight sight)
    {
        var (reach, weight) = (Near(sight.Reach), measure.WeightOf(sight.Telescope));
        for (var level = 0; level < measure.Levels.Length && sight.Shows.Quality >= measure.Levels[level]; level++)
        {
            Quality += weight * At(sight.Telescope, level).Take(reach);
        }
    }

    /// <summary>How much greater the measure would be with one more view.</summary>
    public double GainOf(in Sight sight)
    {
        var (reach, length) = (Near(sight.Reach), 0.0);
        for (var level = 0; level < measure.Levels.Length && sight.Shows.Quality >= measure.Levels[level]; level++)
        {
            length += At(sight.Telescope, level).LengthIn(reach);
        }

        return length * measure.WeightOf(sight.Telescope);
    }

    /// <summary>The measure at the most with so many further choices, wherever their views were: no view of fixed power covers more
    /// than twice the radius, a zoom may cover everything, and nothing is covered twice.</summary>
    public double Most(int choices, Bench bench)
    {
        var most = Quality;
        for (var i = 0; i < wanting.Length; i++)
        {
            var telescope = i / measure.Levels.Length;
            most += measure.WeightOf(telescope) * Math.Min(wanting[i].Length, 2 * measure.Radius * choices * bench.MostPointsIn(telescope));
        }

        return most;
    }

    private Wanting At(int telescope, int level) => wanting[(telescope * measure.Levels.Length) + level];

    private Reach Near(Reach reach) => new(reach.From - measure.Radius, reach.To + measure.Radius);
}
