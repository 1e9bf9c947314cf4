using Evenstep.Planning.Optics;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Answering.Kits;

/// <summary>The table of fields of an observer.</summary>
internal static class ObserverFields
{
    public static readonly Field<double?> Age = Make.Number("age", Bounds.AgeYears, "years", "Age in years, from which the dark-adapted pupil is estimated.");
    public static readonly Field<double?> PupilMm = Make.Number("pupilMm", Bounds.PupilMm, "mm", "The measured dark-adapted pupil, in mm; it goes before the age.");
    public static readonly Field<bool?> WearsSpectacles = Make.Flag("wearsSpectacles", "Whether spectacles are worn at the telescope.").Defaulting("false");

    public static readonly Field<double?> AstigmatismDioptres = Make.Number(
        "astigmatismDioptres", Bounds.CylinderDioptres, "dioptres", "The cylinder of the prescription, in dioptres; its sign does not matter. Only with spectacles.");

    public static readonly Field<double?> LeastEyeReliefMm = Make.Number(
        "leastEyeReliefMm", Bounds.EyeReliefMm, "mm", "The least eye relief put up with, in mm, for owned and bought alike.");

    public static readonly Field<IReadOnlyList<Interest?>> Observes = Make.ListOf(
        "observes", new ChoiceShape<Interest>(), 0, 20, "What the observer likes to look at; without any, all of it.").Defaulting("[]");

    public static readonly Field<ObserverRequest> Observer = Make.Of(
        "observer",
        new ObjectShape<ObserverRequest>(
            "Observer",
            "Who looks: the eye, the spectacles, and what they like to look at.",
            [Age, PupilMm, WearsSpectacles, AstigmatismDioptres, LeastEyeReliefMm, Observes],
            values => new ObserverRequest
            {
                Age = values.Of(Age),
                PupilMm = values.Of(PupilMm),
                WearsSpectacles = values.Of(WearsSpectacles),
                AstigmatismDioptres = values.Of(AstigmatismDioptres),
                LeastEyeReliefMm = values.Of(LeastEyeReliefMm),
                Observes = values.Of(Observes),
            }),
        "Who looks.");
}
