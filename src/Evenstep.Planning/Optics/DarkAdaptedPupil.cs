namespace Evenstep.Planning.Optics;

/// <summary>
/// The diameter of the dark-adapted pupil by age: means of J. C. Bradley, K. C. Bentley, A. I. Mughal, H. Bodhireddy and
/// S. M. Brown, J. Refract. Surg. 27 (2011) 202-207, read as lines between the middles of their age groups. Their group
/// of 18 to 19 years (n = 6) is left out. People of one age differ by about 1.5 mm either way: a measured pupil is better.
/// </summary>
public static class DarkAdaptedPupil
{
    /// <summary>Taken when neither pupil nor age is known, in mm: common practice, no source.</summary>
    public const double UnknownMm = 6.0;

    private static readonly (double Age, double Mm)[] Means =
        [(25, 7.33), (35, 6.64), (45, 6.15), (55, 5.77), (65, 5.58), (75, 5.17), (80, 4.85)];

    /// <summary>Millimetres for an age in years; clamped to the table's ends.</summary>
    public static double MmAtAge(double age)
    {
        if (age <= Means[0].Age)
        {
            return Means[0].Mm;
        }

        for (var i = 1; i < Means.Length; i++)
        {
            var (younger, older) = (Means[i - 1], Means[i]);
            if (age <= older.Age)
            {
                return younger.Mm + ((older.Mm - younger.Mm) * (age - younger.Age) / (older.Age - younger.Age));
            }
        }

        return Means[^1].Mm;
    }
}
