namespace Evenstep.Planning.Solving.Search;

/// <summary>An ocular that may still be chosen below a node.</summary>
/// <param name="Place">Among the offered oculars.</param>
/// <param name="Overlaps">What choosing it would bring about with all that is chosen or shown.</param>
/// <param name="Gain">No more than this would be taken off the mean excess by it: it was so much, or less, when last worked
/// out, and the more is chosen the less another adds.</param>
/// <param name="Quality">Nor would more than this be added to the measure of quality.</param>
internal record struct Option(int Place, int Overlaps, double Gain, double Quality)
{
    public readonly double GainOf(GainIn what) => what == GainIn.Excess ? Gain : Quality;
}
