namespace Evenstep.Planning.Tests.Oracle;

/// <summary>The power range of one telescope and the positions on it.</summary>
internal sealed class OracleScale
{
    private const double DefaultPupilMm = 6.0;
    private const double DefaultSeeingArcsec = 1.5;
    private const double LeastExitPupilMm = 0.7;
    private const double LeastExitPupilOnPlanetsMm = 0.5;
    private const double SeeingDiscArcsec = 300;
    private const double LeastSpan = 1.5;
    private const double LeastWeightNotNamed = 0.45;

    private static readonly (double Age, double PupilMm)[] PupilByAge =
        [(25, 7.33), (35, 6.64), (45, 6.15), (55, 5.77), (65, 5.58), (75, 5.17), (80, 4.85)];

    /// <summary>Zones from low powers to high ones: smallest and largest exit pupil, and the weight.</summary>
    private static readonly (double FromMm, double ToMm, double Weight)[] Zones =
        [(4, double.PositiveInfinity, 0.6), (2, 4, 0.9), (1, 2, 1), (0, 1, 1)];

    private readonly double[] weights;

    public OracleScale(OracleTelescope telescope, OracleProblem problem)
    {
        Telescope = telescope;
        Problem = problem;
        Lowest = telescope.LowestPower ?? Math.Max(
            telescope.ApertureMm / Pupil(problem.Observer),
            telescope.FocalLengthMm / LongestPracticalEyepiece(telescope.FocuserBarrel));
        Highest = telescope.HighestPower ?? Math.Min(
            telescope.ApertureMm / LeastExitPupil(problem),
            SeeingDiscArcsec / (problem.SeeingArcsec ?? DefaultSeeingArcsec));
        weights = [.. Enumerable.Range(0, Zones.Length).Select(zone => Weight(zone, problem))];
        Length = Position(Highest);
    }

    public OracleTelescope Telescope { get; }

    public OracleProblem Problem { get; }

    public double Lowest { get; }

    public double Highest { get; }

    /// <summary>U, the position of the highest power.</summary>
    public double Length { get; }

    public bool IsWideEnough => OracleTolerance.RatioAtLeast(Highest / Lowest, LeastSpan);

    public double Cut(double power) => Math.Min(Math.Max(power, Lowest), Highest);

    public double Position(double power)
    {
        double cut = Cut(power);
        double position = 0;
        for (int zone = 0; zone < Zones.Length; zone++)
        {
            double from = Math.Max(Lowest, PowerAt(Zones[zone].ToMm));
            double to = Math.Min(cut, PowerAt(Zones[zone].FromMm));
            if (to > from)
            {
                position += weights[zone] * Math.Log(to / from);
            }
        }

        return position;

        double PowerAt(double exitPupilMm) => Telescope.ApertureMm / exitPupilMm;
    }

    public static double Pupil(OracleObserver observer)
    {
        if (observer.PupilMm is { } pupil)
        {
            return pupil;
        }

        return observer.Age is { } age ? PupilAt(age) : DefaultPupilMm;
    }

    private static double PupilAt(double age)
    {
        if (age <= PupilByAge[0].Age)
        {
            return PupilByAge[0].PupilMm;
        }

        for (int i = 1; i < PupilByAge.Length; i++)
        {
            (double youngerAge, double youngerPupil) = PupilByAge[i - 1];
            (double olderAge, double olderPupil) = PupilByAge[i];
            if (age <= olderAge)
            {
                return youngerPupil + ((olderPupil - youngerPupil) * (age - youngerAge) / (olderAge - youngerAge));
            }
        }

        return PupilByAge[^1].PupilMm;
    }

    private static double LongestPracticalEyepiece(OracleBarrel focuser) => focuser switch
    {
        OracleBarrel.Inch0965 => 25,
        OracleBarrel.Inch125 => 32,
        _ => 55,
    };

    private static double LeastExitPupil(OracleProblem problem)
    {
        bool bearsMore = problem.Observer.Observes.Any(interest => interest is OracleInterest.Planets or OracleInterest.DoubleStars);
        return bearsMore && problem.Has(OracleDefinitions.SmallExitPupil) ? LeastExitPupilOnPlanetsMm : LeastExitPupilMm;
    }

    private static double Weight(int zone, OracleProblem problem)
    {
        IReadOnlyList<OracleInterest> observes = problem.Observer.Observes;
        double weight = Zones[zone].Weight;
        if (observes.Count == 0 || observes.Any(interest => ZonesOf(interest).Contains(zone)))
        {
            return weight;
        }

        return problem.Has(OracleDefinitions.LeastWeight) ? Math.Max(weight / 2, LeastWeightNotNamed) : weight / 2;
    }

    private static int[] ZonesOf(OracleInterest interest) => interest switch
    {
        OracleInterest.LargeNebulae => [0],
        OracleInterest.Galaxies => [1],
        OracleInterest.StarClusters => [1, 2],
        OracleInterest.PlanetaryNebulae or OracleInterest.Moon or OracleInterest.Planets => [2, 3],
        _ => [3],
    };
}
