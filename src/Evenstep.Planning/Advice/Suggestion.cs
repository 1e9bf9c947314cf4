using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Advice;

/// <summary>Which view of one telescope to use for a target.</summary>
/// <param name="Target">What to look at.</param>
/// <param name="View">The view; null if there is none to look through.</param>
/// <param name="Setting">The view as it is used: a zoom at the focal length that suits best. Null without a view.</param>
/// <param name="Fits">Whether the view shows the target with enough sky around it; if not, none does, and it is the widest.</param>
public sealed record Suggestion(Target Target, KitView? View, Setting? Setting, bool Fits)
{
    /// <summary>The true field for a target, as a multiple of its width: common practice, no source.</summary>
    public const double FieldOverWidth = 1.2;

    private const double ArcminPerDegree = 60;

    /// <summary>
    /// Of the usable views whose true field is enough the one whose exit pupil is nearest to the wanted one, in logarithm; ties
    /// go to the wider true field, and then to the lower power. If none is wide enough, the widest view; ties go to the nearer
    /// exit pupil. A zoom may be turned to any power that the range admits.
    /// </summary>
    public static Suggestion For(Target target, Ladder ladder)
    {
        if (ladder.Usable.IsEmpty)
        {
            return new Suggestion(target, View: null, Setting: null, Fits: false);
        }

        var ways = ladder.Usable.Select(view => Way.Of(view, target)).ToList();
        var fits = ways.Exists(way => way.Fits);
        ways.RemoveAll(way => way.Fits != fits);
        if (fits)
        {
            KeepLeast(ways, way => way.Distance);
            KeepLeast(ways, way => -way.Setting.TrueFieldDeg);
        }
        else
        {
            KeepLeast(ways, way => -way.Setting.TrueFieldDeg);
            KeepLeast(ways, way => way.Distance);
        }

        return new Suggestion(target, ways[0].View, ways[0].Setting, fits);
    }

    private static void KeepLeast(List<Way> ways, Func<Way, double> figure)
    {
        var least = ways.Min(figure);
        ways.RemoveAll(way => Tolerance.Above(figure(way), least));
    }

    /// <summary>A view as it would be used for a target.</summary>
    /// <param name="View">The view.</param>
    /// <param name="Setting">A zoom turned to what suits best.</param>
    /// <param name="Fits">Whether its field is enough.</param>
    /// <param name="Distance">Of its exit pupil from the wanted one, in logarithm.</param>
    private sealed record Way(KitView View, Setting Setting, bool Fits, double Distance)
    {
        public static Way Of(KitView view, Target target)
        {
            var leastFieldDeg = FieldOverWidth * target.WidthArcmin / ArcminPerDegree;
            var setting = Setting.Nearest(view.View, target.WantedExitPupilMm, leastFieldDeg);
            return new Way(
                view,
                setting,
                Tolerance.AtLeast(setting.TrueFieldDeg / leastFieldDeg, 1),
                Math.Abs(Math.Log(setting.ExitPupilMm / target.WantedExitPupilMm)));
        }
    }
}
