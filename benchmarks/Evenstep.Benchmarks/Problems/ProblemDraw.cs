using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Benchmarks.Problems;

/// <summary>
/// Draws problem number n of a set. What every variant has in common is drawn first and from numbers of its own, so that
/// the same number means the same shop, telescope and owner in every variant.
/// </summary>
internal sealed class ProblemDraw
{
    private static readonly (double ApertureMm, double FocalLengthMm, Barrel Focuser)[] Kinds =
    [
        (60, 700, Barrel.Inch125), (80, 480, Barrel.Inch2), (90, 900, Barrel.Inch125), (102, 1000, Barrel.Inch2),
        (112, 900, Barrel.Inch125), (127, 1500, Barrel.Inch125), (130, 650, Barrel.Inch2), (152, 1216, Barrel.Inch2),
        (203, 1218, Barrel.Inch2), (203, 2030, Barrel.Inch125), (254, 1200, Barrel.Inch2), (279, 2800, Barrel.Inch2),
    ];

    private static readonly double[] PackedFocalLengthsMm = [25, 20, 10, 9, 6.5, 32];

    private readonly Variant variant;
    private readonly Assortment catalogue;
    private readonly ImmutableArray<Item> owned;
    private readonly ImmutableArray<Telescope> telescopes;
    private readonly Observer observer;
    private readonly double seeingArcsec;
    private readonly decimal moneyPerPurchase;
    private readonly Dice dice;

    private ProblemDraw(int items, Variant variant, int number)
    {
        this.variant = variant;
        var common = new Dice(items, number);
        catalogue = [.. Shop.Catalogue(items, common, variant.ManyBarlows)];
        owned = Owned(common);
        telescopes = [.. Enumerable.Range(1, PurchaseProblem.MostTelescopes).Select(n => Telescope(n, common)).Take(variant.Telescopes)];
        seeingArcsec = common.Pick(1, PowerRange.UsualSeeingArcsec, PowerRange.UsualSeeingArcsec, 2.5);
        moneyPerPurchase = 5 * common.Int(10, 45);
        dice = new Dice(items, number, 1);
        observer = Observer(common.Chance(0.5) ? common.Int(20, 75) : null);
    }

    public static PurchaseProblem Draw(int items, Variant variant, int number) => new ProblemDraw(items, variant, number).Problem();

    private static ImmutableArray<Item> Owned(Dice dice) =>
    [
        .. Enumerable.Range(1, dice.Int(0, 4)).Select(n => dice.Chance(0.2)
            ? Shop.Barlow($"owned-{n}", dice)
            : Shop.Item($"owned-{n}", PackedEyepiece(dice), 20, 60, dice)),
    ];

    private static Eyepiece PackedEyepiece(Dice dice)
    {
        var focalLengthMm = dice.Pick(PackedFocalLengthsMm);
        return new Eyepiece(focalLengthMm, dice.Int(44, 52), Math.Round(0.7 * focalLengthMm, 1), Barrel.Inch125);
    }

    private static Telescope Telescope(int number, Dice dice)
    {
        var (apertureMm, focalLengthMm, focuser) = dice.Pick(Kinds);
        return new Telescope($"telescope {number}", apertureMm, focalLengthMm, focuser);
    }

    private Observer Observer(int? age) => new()
    {
        Age = age,
        WearsSpectacles = variant.Spectacles,
        AstigmatismDioptres = variant.Spectacles && dice.Chance(0.7) ? dice.Pick(0.25, 0.5, 0.75, 1.5) : null,
        Observes = variant.Interests ? [.. Enum.GetValues<Interest>().Where(_ => dice.Chance(0.35))] : [],
    };

    private PurchaseProblem Problem()
    {
        var plain = new PurchaseProblem
        {
            Telescopes = [.. telescopes.Select(InUse)],
            Observer = observer,
            Owned = owned,
            Catalogue = catalogue,
            Limits = new Limits { Budget = moneyPerPurchase * variant.MaxPurchases, MaxPurchases = variant.MaxPurchases },
            Preferences = new Preferences { Prefer = variant.Prefer, AvoidZooms = !variant.Zooms },
        };
        return plain with { Demands = Demands(Candidacy.Of(plain).Candidates) };
    }

    private TelescopeInUse InUse(Telescope telescope) =>
        TelescopeInUse.Of(telescope, PowerRange.Of(telescope, observer, seeingArcsec), observer.Observes);

    private Demands Demands(ImmutableArray<Item> candidates)
    {
        Item[] affordable = [.. candidates.Where(item => item.Ocular is not null && item.Price <= moneyPerPurchase)];
        return new Demands
        {
            MustInclude = variant.MustInclude && affordable.Length > 0 ? [dice.Pick(affordable).Id] : [],
            MustFrame = variant.MustFrame ? [new FramingDemand("a wide target", Math.Round(dice.Between(0.6, 0.9) * WidestFieldDeg(), 2))] : [],
            ReticleLeastPower = variant.Reticle ? Math.Round(dice.Between(0.3, 0.8) * InUse(telescopes[0]).Range.Highest) : null,
        };
    }

    /// <summary>What 50 degrees of apparent field give at the lowest power of the range.</summary>
    private double WidestFieldDeg() => 50 / InUse(telescopes[0]).Range.Lowest;
}
