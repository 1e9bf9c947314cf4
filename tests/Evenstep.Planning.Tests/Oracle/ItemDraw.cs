namespace Evenstep.Planning.Tests.Oracle;

/// <summary>Draws the items of one problem, whose prices and focal lengths share a style.</summary>
internal sealed class ItemDraw
{
    private static readonly double[] RoundFocalLengths =
        [3, 4, 4.6, 5, 6, 6.9, 7, 8, 9.2, 10, 11.5, 12, 13.8, 15, 16, 17.25, 18, 20, 23, 24, 25, 26, 28, 30, 32, 35, 40, 50];

    private static readonly double[] ApparentFields = [40, 45, 48, 49.5, 50, 50, 52, 58, 60, 65, 68, 70, 72, 82, 84, 100];

    private static readonly double[][] FactorSets =
        [[2], [2], [3], [1.5], [1.1], [2.5], [5], [1.15], [1.5, 2], [2, 3], [1.5, 2.25], [1.1, 1.6], [1.4, 2, 2.8]];

    private readonly Dice dice;
    private readonly IReadOnlyList<OracleTelescope> telescopes;
    private readonly bool roundFocalLengths;

    /// <summary>Whether much is drawn for the thin barrel where a telescope has one; else that telescope mostly stands aside.</summary>
    private readonly bool servesThinBarrel;
    private readonly decimal priceStep;
    private readonly double massKnown;
    private readonly bool longReliefs;
    private readonly double pupilMm;
    private readonly string[] groups;

    public ItemDraw(Dice dice, IReadOnlyList<OracleTelescope> telescopes, OracleObserver observer)
    {
        this.dice = dice;
        this.telescopes = telescopes;
        longReliefs = observer.WearsSpectacles && dice.Chance(0.8);
        pupilMm = OracleScale.Pupil(observer);
        roundFocalLengths = dice.Chance(0.7);
        servesThinBarrel = telescopes.All(telescope => telescope.FocuserBarrel == OracleBarrel.Inch0965) || dice.Chance(0.4);
        priceStep = dice.Pick(50m, 10m, 10m, 0.01m);
        massKnown = dice.Pick(0.0, 0.6, 0.9, 1.0);
        groups = [.. Enumerable.Range(1, dice.Int(1, 4)).Select(number => $"group-{number}")];
    }

    public OracleItem Eyepiece(string id)
    {
        double focalLength = FocalLength();
        OracleBarrel barrel = EyepieceBarrel(focalLength);
        double apparentField = dice.Pick(ApparentFields);
        double stop = Math.Round(focalLength * apparentField * Math.PI / 180 * dice.Between(0.88, 1.02), 1);
        return Common(id, barrel, 20 + (apparentField * dice.Between(0.3, 3))) with
        {
            Kind = OracleKind.Eyepiece,
            FocalLengthMm = focalLength,
            StatedApparentFieldDeg = dice.Chance(0.88) ? apparentField : null,
            FieldStopMm = dice.Chance(0.4) ? Math.Clamp(stop, 1, 46) : null,
            StatedEyeReliefMm = dice.Chance(0.88) ? EyeRelief(focalLength) : null,
            FastestFocalRatio = dice.Chance(0.4) ? FastestFocalRatio() : null,
        };
    }

    public OracleItem Reticle(string id) => Eyepiece(id) with
    {
        Barrel = UsualBarrel(),
        FocalLengthMm = dice.Pick(5.0, 6, 9, 12, 20),
        FieldStopMm = null,
        IsReticle = true,
    };

    public OracleItem Zoom(string id)
    {
        double shortest = dice.Pick(3.0, 4, 5, 6.5, 7, 8, 8, 10);
        double atLongest = dice.Pick(38.0, 42, 48, 50, 52);
        return Common(id, UsualBarrel(), dice.Between(60, 300)) with
        {
            Kind = OracleKind.Zoom,
            ShortestFocalLengthMm = shortest,
            LongestFocalLengthMm = shortest * dice.Pick(1.5, 2, 2.5, 3),
            ApparentFieldAtLongestDeg = atLongest,
            ApparentFieldAtShortestDeg = atLongest + dice.Pick(0.0, 10, 18, 20),
            EyeReliefMm = longReliefs ? dice.Pick(15.0, 16, 17, 18, 20) : dice.Pick(8.0, 10, 14, 15, 18),
            FastestFocalRatio = dice.Chance(0.3) ? FastestFocalRatio() : null,
        };
    }

    public OracleItem Barlow(string id)
    {
        OracleBarrel barrel = UsualBarrel() == OracleBarrel.Inch0965
            ? OracleBarrel.Inch0965
            : dice.Pick(OracleBarrel.Inch125, OracleBarrel.Inch125, OracleBarrel.Inch2);
        return Common(id, barrel, dice.Between(30, 150)) with
        {
            Kind = OracleKind.Barlow,
            Factors = dice.Pick(FactorSets),
            FastestFocalRatio = dice.Chance(0.35) ? FastestFocalRatio() : null,
            ParfocalGroup = null,
        };
    }

    /// <summary>An item alike in all that optics see.</summary>
    public OracleItem Alike(OracleItem item, string id)
    {
        OracleItem other = Common(id, item.Barrel, (double)item.Price * dice.Between(0.8, 1.25));
        return item with
        {
            Id = id,
            Price = dice.Chance(0.4) ? item.Price : other.Price,
            MassGrams = dice.Chance(0.4) ? item.MassGrams : other.MassGrams,
            ParfocalGroup = dice.Chance(0.4) || item.Kind == OracleKind.Barlow ? item.ParfocalGroup : other.ParfocalGroup,
            InStock = other.InStock,
        };
    }

    /// <summary>An eyepiece of less power whose true field is about that of another.</summary>
    public OracleItem OfLessPower(OracleItem item, string id)
    {
        OracleItem other = Eyepiece(id);
        double longer = dice.Pick(1.2, 1.25, 1.33, 1.4, 1.5);
        double field = Math.Round(item.ApparentFieldDeg / longer * dice.Pick(1.0, 1.04, 1.08, 1.1, 1.12, 1.2));
        return other with
        {
            Barrel = item.Barrel,
            FocalLengthMm = Math.Min(Math.Round(item.FocalLengthMm * longer, 1), 100),
            ApparentFieldDeg = Math.Clamp(field, 30, 110),
            FieldStopMm = null,
            EyeReliefMm = dice.Chance(0.5) ? item.EyeReliefMm : other.EyeReliefMm,
            Price = dice.Chance(0.5) ? item.Price : other.Price,
        };
    }

    /// <summary>An eyepiece of the same power, or nearly, with another field.</summary>
    public OracleItem OfOtherField(OracleItem item, string id)
    {
        OracleItem other = Eyepiece(id);
        return other with
        {
            Barrel = item.Barrel,
            FocalLengthMm = Math.Clamp(Math.Round(item.FocalLengthMm * dice.Pick(1.0, 1, 1.05, 0.95, 1.1), 1), 1.5, 100),
            ApparentFieldDeg = Math.Clamp(Math.Round(item.ApparentFieldDeg * dice.Pick(0.7, 0.78, 0.85, 1.2, 1.26, 1.4)), 30, 110),
            FieldStopMm = null,
        };
    }

    private OracleItem Common(string id, OracleBarrel barrel, double price) => new()
    {
        Id = id,
        Kind = OracleKind.Eyepiece,
        Barrel = barrel,
        ParfocalGroup = dice.Chance(0.5) ? dice.Pick(groups) : null,
        MassGrams = dice.Chance(massKnown) ? 50 * dice.Int(1, barrel == OracleBarrel.Inch2 ? 20 : 8) : null,
        Price = dice.Chance(0.03) ? 0 : Math.Round((decimal)price / priceStep) * priceStep,
        InStock = dice.Chance(0.96),
    };

    /// <summary>Mostly one of use in some telescope, so that most items are candidates.</summary>
    private double FocalLength()
    {
        if (dice.Chance(0.1))
        {
            return FocalLengthAtTheLowEnd(dice.Pick(telescopes));
        }

        (double shortest, double longest) = dice.Chance(0.9) ? UsefulFocalLengths(dice.Pick(telescopes)) : (3, 50);
        double[] round = [.. RoundFocalLengths.Where(length => length >= shortest && length <= longest)];
        return roundFocalLengths && round.Length > 0
            ? dice.Pick(round)
            : Math.Round(shortest * Math.Pow(longest / shortest, dice.Between(0, 1)), 1);
    }

    /// <summary>With an exit pupil about as wide as the observer's.</summary>
    private double FocalLengthAtTheLowEnd(OracleTelescope telescope)
    {
        double focalLength = telescope.FocalLengthMm / telescope.ApertureMm * pupilMm * dice.Between(0.8, 1.24);
        return Math.Round(Math.Clamp(focalLength, 4, 55), 1);
    }

    private static (double Shortest, double Longest) UsefulFocalLengths(OracleTelescope telescope)
    {
        double focalRatio = telescope.FocalLengthMm / telescope.ApertureMm;
        double longest = telescope.FocuserBarrel == OracleBarrel.Inch2 ? 50 : 35;
        return (Math.Max(0.6 * focalRatio, telescope.FocalLengthMm / 240), Math.Min(7.2 * focalRatio, longest));
    }

    private OracleBarrel EyepieceBarrel(double focalLength)
    {
        OracleBarrel barrel = UsualBarrel();
        bool fitsSome = telescopes.Any(telescope => telescope.FocuserBarrel == OracleBarrel.Inch2);
        double chanceOfWideBarrel = (fitsSome ? 1 : 0.1) * (focalLength >= 20 ? 0.5 : 0.1);
        return barrel == OracleBarrel.Inch125 && dice.Chance(chanceOfWideBarrel) ? OracleBarrel.Inch2 : barrel;
    }

    private OracleBarrel UsualBarrel()
    {
        bool thin = telescopes.Any(telescope => telescope.FocuserBarrel == OracleBarrel.Inch0965);
        return dice.Chance(thin && servesThinBarrel ? 0.6 : 0.02) ? OracleBarrel.Inch0965 : OracleBarrel.Inch125;
    }

    private double EyeRelief(double focalLength) => dice.Chance(0.85)
        ? longReliefs ? dice.Pick(10.0, 14, 15, 15, 16, 16, 17, 17, 18, 20, 22) : dice.Pick(4.0, 5, 6, 8, 9, 10, 10, 12, 14, 15, 16, 18, 20)
        : Math.Max(3, Math.Round(focalLength * dice.Between(0.5, 0.9)));

    /// <summary>Mostly near the focal ratio of some telescope.</summary>
    private double FastestFocalRatio()
    {
        OracleTelescope telescope = dice.Pick(telescopes);
        double ratio = telescope.FocalLengthMm / telescope.ApertureMm * dice.Pick(0.8, 0.95, 1, 1.05, 1.3, 1.6, 2.2);
        return Math.Clamp(Math.Round(ratio, 1), 2, 20);
    }
}
