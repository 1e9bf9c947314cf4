namespace Evenstep.Planning.Tests.Oracle;

/// <summary>Draws the items of one problem, whose prices and focal lengths share a style.</summary>
internal sealed class ItemDraw
{
    private static readonly double[] RoundFocalLengths =
        [3, 4, 4.6, 5, 6, 6.9, 7, 8, 9.2, 10, 11.5, 12, 13.8, 15, 16, 17.25, 18, 20, 23, 24, 25, 26, 28, 30, 32, 35, 40, 50];

    private static readonly double[] ApparentFields = [40, 45, 50, 52, 60, 65, 68, 70, 76, 82, 100];

    private static readonly double[][] FactorSets =
        [[2], [2], [3], [1.5], [1.1], [2.5], [5], [1.15], [1.5, 2], [2, 3], [1.5, 2.25], [1.1, 1.6], [1.4, 2, 2.8]];

    private readonly Dice dice;
    private readonly IReadOnlyList<OracleTelescope> telescopes;
    private readonly bool roundFocalLengths;
    private readonly decimal priceStep;
    private readonly double massKnown;
    private readonly string[] groups;

    public ItemDraw(Dice dice, IReadOnlyList<OracleTelescope> telescopes)
    {
        this.dice = dice;
        this.telescopes = telescopes;
        roundFocalLengths = dice.Chance(0.7);
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
            ApparentFieldDeg = apparentField,
            FieldStopMm = dice.Chance(0.4) ? Math.Clamp(stop, 1, 46) : null,
            EyeReliefMm = EyeRelief(focalLength),
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
        double atLongest = dice.Pick(38.0, 40, 42, 48, 50);
        return Common(id, UsualBarrel(), dice.Between(60, 300)) with
        {
            Kind = OracleKind.Zoom,
            ShortestFocalLengthMm = shortest,
            LongestFocalLengthMm = shortest * dice.Pick(1.5, 2, 2.5, 3),
            ApparentFieldAtLongestDeg = atLongest,
            ApparentFieldAtShortestDeg = atLongest + dice.Pick(0.0, 10, 18, 20),
            EyeReliefMm = dice.Pick(10.0, 14, 15, 16, 18, 20),
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
        (double shortest, double longest) = dice.Chance(0.9) ? UsefulFocalLengths(dice.Pick(telescopes)) : (3, 50);
        double[] round = [.. RoundFocalLengths.Where(length => length >= shortest && length <= longest)];
        return roundFocalLengths && round.Length > 0
            ? dice.Pick(round)
            : Math.Round(shortest * Math.Pow(longest / shortest, dice.Between(0, 1)), 1);
    }

    private static (double Shortest, double Longest) UsefulFocalLengths(OracleTelescope telescope)
    {
        double focalRatio = telescope.FocalLengthMm / telescope.ApertureMm;
        double longest = telescope.FocuserBarrel == OracleBarrel.Inch2 ? 50 : 35;
        return (Math.Max(0.6 * focalRatio, telescope.FocalLengthMm / 240), Math.Min(6.5 * focalRatio, longest));
    }

    private OracleBarrel EyepieceBarrel(double focalLength)
    {
        OracleBarrel barrel = UsualBarrel();
        bool fitsSome = telescopes.Any(telescope => telescope.FocuserBarrel == OracleBarrel.Inch2);
        double chanceOfWideBarrel = (fitsSome ? 1 : 0.2) * (focalLength >= 20 ? 0.5 : 0.1);
        return barrel == OracleBarrel.Inch125 && dice.Chance(chanceOfWideBarrel) ? OracleBarrel.Inch2 : barrel;
    }

    private OracleBarrel UsualBarrel()
    {
        bool thin = telescopes.Any(telescope => telescope.FocuserBarrel == OracleBarrel.Inch0965);
        return dice.Chance(thin ? 0.6 : 0.02) ? OracleBarrel.Inch0965 : OracleBarrel.Inch125;
    }

    private double EyeRelief(double focalLength) => dice.Chance(0.8)
        ? dice.Pick(8.0, 10, 12, 15, 15, 16, 18, 20, 22)
        : Math.Max(3, Math.Round(focalLength * dice.Between(0.5, 0.9)));
}
