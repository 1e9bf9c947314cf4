using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>
/// For every framing demand, some usable view of the kit, in the telescope it names or else in any, has a true field of at
/// least the width asked.
/// </summary>
internal static class MustFrame
{
    public static void Keep(PurchaseModel model)
    {
        foreach (var demand in model.Problem.Demands.MustFrame)
        {
            model.RequireOneOf(ViewsOf(model, demand.TelescopeIndex).Where(view => IsWide(view, demand.WidthDeg)));
        }
    }

    public static IEnumerable<PossibleView> ViewsOf(PurchaseModel model, int? telescopeIndex) => telescopeIndex is { } index
        ? model.Space.Telescopes[index].All
        : model.Space.Telescopes.SelectMany(telescope => telescope.All);

    public static bool IsWide(PossibleView view, double widthDeg) => IsWide(view.KitView, widthDeg);

    public static bool IsWide(KitView view, double widthDeg) => Tolerance.AtLeast(view.View.TrueFieldDeg / widthDeg, 1);
}
