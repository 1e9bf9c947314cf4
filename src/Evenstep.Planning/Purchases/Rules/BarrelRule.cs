using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>The barrel of every item bought fits the focuser of some telescope.</summary>
internal static class BarrelRule
{
    public static bool Excludes(ItemAlone alone) => !FitsSomeTelescope(alone.Problem, alone.Item);

    public static bool FitsSomeTelescope(PurchaseProblem problem, Item item)
    {
        foreach (var telescope in problem.Telescopes)
        {
            if (item.Optic.Barrel.FitsInto(telescope.Telescope.FocuserBarrel))
            {
                return true;
            }
        }

        return false;
    }
}
