using System.Globalization;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks.Http;

/// <summary>Requests that name a catalogue, no two alike.</summary>
internal static class DifferentRequests
{
    private static readonly (double ApertureMm, double FocalLengthMm, string Focuser)[] Telescopes =
        [(80, 480, "2in"), (102, 1000, "1.25in"), (130, 650, "1.25in"), (152, 1216, "2in"), (203, 1218, "2in"), (254, 1200, "2in")];

    private static readonly int[] Budgets = [90, 140, 190, 260, 340, 430, 560, 700];

    /// <summary>Each telescope with each budget.</summary>
    public static string[] For(string catalogue) =>
    [
        .. Budgets.SelectMany(budget => Telescopes.Select(telescope => string.Create(CultureInfo.InvariantCulture, $$"""
            {
              "telescopes": [ { "apertureMm": {{telescope.ApertureMm}}, "focalLengthMm": {{telescope.FocalLengthMm}},
                "focuserBarrel": "{{telescope.Focuser}}" } ],
              "catalogue": { "id": "{{catalogue}}" },
              "limits": { "budget": {{budget}} }
            }
            """))),
    ];

    /// <summary>The same as problems.</summary>
    public static PurchaseProblem[] Problems(Assortment catalogue) =>
    [
        .. Budgets.SelectMany(budget => Telescopes.Select(telescope => new PurchaseProblem
        {
            Telescopes = [InUse(telescope.ApertureMm, telescope.FocalLengthMm, telescope.Focuser == "2in" ? Barrel.Inch2 : Barrel.Inch125)],
            Observer = new Observer(),
            Owned = [],
            Catalogue = catalogue,
            Limits = new Limits { Budget = budget },
        })),
    ];

    private static TelescopeInUse InUse(double apertureMm, double focalLengthMm, Barrel focuser)
    {
        var telescope = new Telescope("telescope 1", apertureMm, focalLengthMm, focuser);
        return TelescopeInUse.Of(telescope, PowerRange.Of(telescope, new Observer(), PowerRange.UsualSeeingArcsec), []);
    }
}
