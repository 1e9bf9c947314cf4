namespace Evenstep.Planning.Optics;

/// <summary>A view at one focal length of its ocular: a zoom turned to it. An eyepiece has no other.</summary>
/// <param name="View">The view.</param>
/// <param name="FocalLengthMm">Of the ocular, in mm.</param>
public readonly record struct Setting(View View, double FocalLengthMm)
{
    public double Power => View.Telescope.Telescope.FocalLengthMm * View.Factor / FocalLengthMm;

    public double ExitPupilMm => View.Telescope.Telescope.ApertureMm / Power;

    /// <summary>In degrees.</summary>
    public double TrueFieldDeg => View.IsZoom ? View.Ocular.ApparentFieldDegAt(FocalLengthMm) / Power : View.TrueFieldDeg;

    /// <summary>The setting whose exit pupil is nearest to the wanted one among those that show a field; the one that shows
    /// the widest field where none does.</summary>
    /// <param name="view">Of an eyepiece or a zoom.</param>
    /// <param name="wantedExitPupilMm">In mm.</param>
    /// <param name="leastFieldDeg">The least true field, in degrees.</param>
    public static Setting Nearest(in View view, double wantedExitPupilMm, double leastFieldDeg)
    {
        if (view.Ocular is not Zoom zoom)
        {
            return new Setting(view, view.Ocular.LongestFocalLengthMm);
        }

        var telescope = view.Telescope.Telescope;
        var mmForExitPupil = telescope.FocalLengthMm * view.Factor / telescope.ApertureMm;
        var travel = ZoomTravel.Of(view, zoom);
        return new Setting(view, travel.Nearest(wantedExitPupilMm * mmForExitPupil, leastFieldDeg));
    }
}
