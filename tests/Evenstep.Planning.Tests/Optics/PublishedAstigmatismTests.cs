using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Tests.Optics;

/// <summary>
/// The exit pupil up to which spectacles may come off, derived from the wavefront: about the circle of least confusion a
/// cylinder C makes W = C (x^2 - y^2) / 4, in micrometres for dioptres and millimetres.
/// </summary>
public sealed class PublishedAstigmatismTests
{
    private const double WavelengthMicrometres = 0.550;

    /// <summary>Samples along a radius; the wavefront is smooth, so that its sums converge with their square.</summary>
    private const int Samples = 400;

    private const double SamplingError = 0.002;

    [Theory]
    [InlineData(0.25)]
    [InlineData(-0.75)]
    [InlineData(1.00)]
    [InlineData(-3.00)]
    public void At_that_exit_pupil_the_wavefront_is_a_quarter_wave_peak_to_valley(double cylinder)
    {
        var (peakToValley, rms) = Wavefront(cylinder, WidestExitPupilMm(cylinder));

        Assert.Equal(WavelengthMicrometres / 4, peakToValley, SamplingError * WavelengthMicrometres);
        // Published as wavelength / 19.6, with a Strehl ratio of 0.90: archive of a telescope makers' list, June 2004,
        // after Applied Optics and Optical Design II, p. 626.
        Published.Agrees(WavelengthMicrometres / 19.6, rms, SamplingError * WavelengthMicrometres, "RMS of a quarter wave of astigmatism");
        var strehl = Math.Exp(-Math.Pow(2 * Math.PI * rms / WavelengthMicrometres, 2));
        const double HalfLastPlaceOfStrehl = 0.005;
        Published.Agrees(0.90, strehl, HalfLastPlaceOfStrehl, "Strehl ratio of a quarter wave of astigmatism");
    }

    [Fact]
    public void Peak_to_valley_does_not_depend_on_where_the_eye_focuses()
    {
        var pupilMm = WidestExitPupilMm(1);
        var atLineFocus = SampledPupil(pupilMm).Select(point => point.X * point.X / 2).ToArray();

        Assert.Equal(WavelengthMicrometres / 4, atLineFocus.Max() - atLineFocus.Min(), SamplingError * WavelengthMicrometres);
    }

    [Theory]
    [InlineData(0.25, 2.10)]
    [InlineData(0.50, 1.48)]
    [InlineData(0.75, 1.21)]
    [InlineData(1.00, 1.05)]
    [InlineData(1.50, 0.86)]
    [InlineData(2.00, 0.74)]
    [InlineData(3.00, 0.61)]
    public void It_follows_the_derived_table_whatever_the_sign_of_the_cylinder(double cylinder, double tableMm)
    {
        const double HalfLastPlace = 0.005;
        Derived.Agrees(tableMm, WidestExitPupilMm(cylinder), HalfLastPlace, "1.049 / sqrt(C)");
        Assert.Equal(WidestExitPupilMm(cylinder), WidestExitPupilMm(-cylinder));
    }

    [Theory]
    [InlineData(0.25)]
    [InlineData(1.00)]
    [InlineData(3.00)]
    public void It_is_stricter_than_a_fourteenth_of_a_wave(double cylinder)
    {
        // Marechal's criterion: RMS = C p^2 / (16 sqrt 6) = wavelength / 14.
        var marechalMm = Math.Sqrt(16 * Math.Sqrt(6) * WavelengthMicrometres / 14 / cylinder);
        Assert.True(WidestExitPupilMm(cylinder) < marechalMm);
    }

    private static double WidestExitPupilMm(double cylinder) =>
        new Observer { WearsSpectacles = true, AstigmatismDioptres = cylinder }.SpectaclesOffUpToExitPupilMm!.Value;

    private static (double PeakToValley, double Rms) Wavefront(double cylinder, double pupilMm)
    {
        double[] heights = [.. SampledPupil(pupilMm).Select(point => cylinder * ((point.X * point.X) - (point.Y * point.Y)) / 4)];
        var mean = heights.Average();
        return (heights.Max() - heights.Min(), Math.Sqrt(heights.Average(height => (height - mean) * (height - mean))));
    }

    private static IEnumerable<(double X, double Y)> SampledPupil(double pupilMm) =>
        from i in Enumerable.Range(-Samples, (2 * Samples) + 1)
        from j in Enumerable.Range(-Samples, (2 * Samples) + 1)
        where (i * i) + (j * j) <= Samples * Samples
        select (i * pupilMm / 2 / Samples, j * pupilMm / 2 / Samples);
}
