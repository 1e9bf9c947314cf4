namespace Evenstep.Service.Contract.Languages;

/// <summary>
/// To how many places the figures of one sentence are written: as few as prose wants, but so many that two that differ never
/// read alike, for a sentence that calls 0.7 mm less than 0.7 mm says nothing.
/// </summary>
internal sealed class Precision
{
    /// <summary>So that what differs by the noise of a measurement does not drag a tail of digits behind it.</summary>
    private const int MostFurtherPlaces = 3;

    private const int MostUsualPlaces = 2;

    /// <summary>No figure is written to more.</summary>
    public const int MostPlaces = MostUsualPlaces + MostFurtherPlaces;

    private readonly List<(string How, double Figure)> figures = [];

    /// <summary>Notes a figure of the sentence: all of them, before any is written.</summary>
    public void Note(string how, double figure)
    {
        if (ToldApart(how))
        {
            figures.Add((how, figure));
        }
    }

    /// <summary>The places of what is written so, in the whole sentence.</summary>
    public int PlacesFor(string how)
    {
        var places = UsualPlacesOf(how);
        var most = places + MostFurtherPlaces;
        while (places < most && AnyReadAlike(how, places))
        {
            places++;
        }

        return places;
    }

    private static int UsualPlacesOf(string how) => how switch
    {
        "deg" or "mm" or "factor" => MostUsualPlaces,
        "g" or "cone" or "tenths" => 1,
        _ => 0,
    };

    /// <summary>Not what only helps to tell one view from another, or stands in a drawing, which has no room.</summary>
    private static bool ToldApart(string how) => how is "x" or "deg" or "mm" or "g" or "cone";

    private bool AnyReadAlike(string how, int places)
    {
        for (var i = 0; i < figures.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (figures[i].How == how && figures[j].How == how && ReadAlike(figures[i].Figure, figures[j].Figure, places))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static bool ReadAlike(double one, double other, int places) =>
        !Rounded.AreEqual(one, other) && Rounded.To(one, places) == Rounded.To(other, places);
}
