namespace Evenstep.Service.Wording;

/// <summary>
/// To how many places the figures of one sentence are written: as few as prose wants, but so many that two that differ never
/// read alike, for a sentence that calls 0.7 mm less than 0.7 mm says nothing.
/// </summary>
/// <param name="figures">All of the sentence, each with how it is written.</param>
internal sealed class Precision(IEnumerable<(string How, double Figure)> figures)
{
    /// <summary>So that what differs by the noise of a measurement does not drag a tail of digits behind it.</summary>
    private const int MostFurtherPlaces = 3;

    private readonly (string How, double Figure)[] figures = [.. figures];

    /// <summary>The places of what is written so, in the whole sentence.</summary>
    public int PlacesFor(string how)
    {
        var usual = UsualPlacesOf(how);
        return ToldApart(how) ? usual + FurtherPlaces([.. figures.Where(one => one.How == how).Select(one => one.Figure)], usual) : usual;
    }

    private static int UsualPlacesOf(string how) => how switch
    {
        "deg" or "mm" or "factor" => 2,
        "g" or "cone" or "tenths" => 1,
        _ => 0,
    };

    /// <summary>Not what only helps to tell one view from another, or stands in a drawing, which has no room.</summary>
    private static bool ToldApart(string how) => how is "x" or "deg" or "mm" or "g" or "cone";

    private static int FurtherPlaces(double[] figures, int usual)
    {
        var further = 0;
        while (further < MostFurtherPlaces && AnyReadAlike(figures, usual + further))
        {
            further++;
        }

        return further;
    }

    private static bool AnyReadAlike(double[] figures, int places)
    {
        for (var i = 0; i < figures.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (!Rounded.AreEqual(figures[i], figures[j]) && Rounded.To(figures[i], places) == Rounded.To(figures[j], places))
                {
                    return true;
                }
            }
        }

        return false;
    }
}
