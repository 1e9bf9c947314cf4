using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>A usable view reduced to what plans are made of: where it lies on its telescope's axis, what it repeats, how good it is.</summary>
public readonly record struct Showing
{
    /// <summary>An exit pupil, in mm, from which on a power is low: common practice, no source.</summary>
    private const double LowPowerExitPupilMm = 2;

    private Showing(PurchaseProblem problem, Item eyepiece, bool eyepieceIsBought, Item? barlow, in View view, Drawbacks drawbacks)
    {
        (Eyepiece, Barlow, EyepieceIsBought) = (eyepiece, barlow, eyepieceIsBought);
        (IsZoom, LnPower, LnCutPower, TrueFieldDeg) = (view.IsZoom, view.LnPower, view.LnCutPower, view.TrueFieldDeg);
        Reach = new Reach(view.From, view.To);
        IsBoughtForSky = eyepieceIsBought && barlow is null && !view.IsZoom && Tolerance.AtLeast(view.ExitPupilMm, LowPowerExitPupilMm);
        Quality = (byte)Purchases.Quality.Of(problem.Preferences.Prefer, view.Ocular, drawbacks);
    }

    /// <summary>The eyepiece or zoom looked into.</summary>
    public Item Eyepiece { get; }

    /// <summary>The Barlow it is looked through, or null.</summary>
    public Item? Barlow { get; }

    public bool EyepieceIsBought { get; }

    /// <summary>Whether it has a stretch of powers.</summary>
    public bool IsZoom { get; }

    /// <summary>Whether the eyepiece, alone, would be bought for a low power: low powers are bought for the sky that they take in.</summary>
    public bool IsBoughtForSky { get; }

    /// <summary>In quarters: see <see cref="Purchases.Quality"/>.</summary>
    public byte Quality { get; }

    /// <summary>The logarithm of the power; of a zoom's lowest.</summary>
    public double LnPower { get; }

    /// <summary>The same, of the power cut to the range.</summary>
    public double LnCutPower { get; }

    /// <summary>In degrees.</summary>
    public double TrueFieldDeg { get; }

    /// <summary>The positions it reaches.</summary>
    public Reach Reach { get; }

    public static Showing Of(PurchaseProblem problem, Item eyepiece, bool eyepieceIsBought, Item? barlow, in View view) =>
        Of(problem, eyepiece, eyepieceIsBought, barlow, view, view.DrawbacksFor(problem.Observer));

    internal static Showing Of(PurchaseProblem problem, Item eyepiece, bool eyepieceIsBought, Item? barlow, in View view, Drawbacks drawbacks) =>
        new(problem, eyepiece, eyepieceIsBought, barlow, view, drawbacks);
}
