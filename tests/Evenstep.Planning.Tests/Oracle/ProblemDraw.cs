namespace Evenstep.Planning.Tests.Oracle;

/// <summary>Draws one problem: first what is given, then demands measured by what the candidates can do.</summary>
internal sealed class ProblemDraw
{
    private static readonly (double ApertureMm, double FocalLengthMm)[] Sizes =
    [
        (60, 700), (70, 900), (80, 400), (80, 640), (102, 1000), (114, 900), (127, 1500), (130, 650), (150, 750),
        (150, 1200), (203, 1000), (203, 1200), (203, 2030), (254, 1200), (300, 1500), (406, 1800), (508, 2000),
    ];

    private readonly Dice dice;

    /// <summary>A roomy problem leaves many sets allowed, so that the preference has something to choose from.</summary>
    private readonly bool roomy;

    /// <summary>Some eyepieces owned, few on sale but Barlows: only so do two Barlows ever pay.</summary>
    private readonly bool richInBarlows;

    /// <summary>So much is owned that little of the range needs anything.</summary>
    private readonly bool wellEquipped;

    public ProblemDraw(Random random)
    {
        dice = new Dice(random);
        roomy = dice.Chance(0.5);
        richInBarlows = dice.Chance(0.12);
        wellEquipped = !richInBarlows && dice.Chance(0.1);
    }

    public OracleProblem Draw()
    {
        OracleTelescope[] telescopes = [.. Enumerable.Range(1, dice.Weighted((60, 1), (28, 2), (12, 3))).Select(Telescope)];
        OracleObserver observer = Observer();
        ItemDraw items = new(dice, telescopes, observer);
        bool zoomsAllowed = dice.Chance(0.45);
        double? reticleLeastPower = dice.Chance(0.15) ? dice.Pick(40.0, 60, 80, 100, 120, 150) : null;
        OracleItem[] catalogue = Catalogue(items, zoomsAllowed, reticleLeastPower is not null);
        OracleProblem problem = new()
        {
            Telescopes = telescopes,
            Observer = observer,
            SeeingArcsec = dice.Chance(0.6) ? null : dice.Pick(0.8, 1.0, 2, 2.5, 3),
            Owned = Owned(items, catalogue, reticleLeastPower is not null),
            Catalogue = catalogue,
            Limits = Limits(catalogue),
            Preferences = Preferences(catalogue, zoomsAllowed, reticleLeastPower),
        };
        return Exhaustive.RangesAreWideEnough(problem) ? WithDemands(problem) : problem;
    }

    private OracleTelescope Telescope(int number)
    {
        (double aperture, double focalLength) = dice.Pick(number > 1 && dice.Chance(0.3) ? Sizes[..4] : Sizes);
        OracleBarrel focuser = aperture <= 80 && dice.Chance(number > 1 ? 0.5 : 0.15) ? OracleBarrel.Inch0965
            : aperture >= 102 && dice.Chance(0.6) ? OracleBarrel.Inch2
            : OracleBarrel.Inch125;
        return new OracleTelescope
        {
            Name = $"Telescope {number}",
            ApertureMm = aperture,
            FocalLengthMm = focalLength,
            FocuserBarrel = focuser,
            LowestPower = dice.Chance(0.12) ? Math.Round(aperture / dice.Between(3, 8)) : null,
            HighestPower = dice.Chance(0.12) ? Math.Round(aperture * dice.Between(0.6, 1.8)) : null,
        };
    }

    private OracleObserver Observer()
    {
        bool spectacles = dice.Chance(0.35);
        return new OracleObserver
        {
            Age = dice.Chance(0.4) ? dice.Int(10, 90) : null,
            PupilMm = dice.Chance(0.2) ? dice.Pick(3, 4, 4.5, 5, 5.5, 6.5, 7.5) : null,
            WearsSpectacles = spectacles,
            AstigmatismDioptres = dice.Chance(spectacles ? 0.6 : 0.1) ? dice.Pick(0, 0.25, -0.5, 0.75, -1, 1.5, -2.5) : null,
            LeastEyeReliefMm = dice.Chance(0.12) ? dice.Pick(4.0, 5, 8, 10, 12, 15) : null,
            Observes = Interests(),
        };
    }

    private OracleInterest[] Interests()
    {
        if (dice.Chance(0.35))
        {
            return [];
        }

        OracleInterest[] others = RandomProblems.InAnotherOrder(Enum.GetValues<OracleInterest>().Skip(1), dice.Random);
        OracleInterest[] some = others[..dice.Int(1, 2)];
        return dice.Chance(0.5) ? [OracleInterest.LargeNebulae, .. some] : some;
    }

    private OracleItem[] Catalogue(ItemDraw items, bool zoomsAllowed, bool reticleAsked)
    {
        int count = richInBarlows ? dice.Int(5, 8) : roomy
            ? dice.Int(12, 16)
            : dice.Weighted((20, dice.Int(5, 7)), (80, dice.Int(8, 14)));
        int zooms = zoomsAllowed ? dice.Int(1, 3) : dice.Weighted((70, 0), (30, 1));
        int barlows = richInBarlows ? dice.Int(3, 4) : dice.Weighted((20, 0), (40, 1), (25, 2), (15, 3));
        int reticles = reticleAsked ? dice.Weighted((3, 0), (37, 1), (60, 2)) : dice.Weighted((85, 0), (15, 1));
        Queue<string> ids = new(RandomProblems.InAnotherOrder(
            Enumerable.Range(1, count + zooms + barlows + reticles).Select(number => $"item-{number:00}"), dice.Random));

        List<OracleItem> catalogue = [];
        Add(zooms, items.Zoom);
        Add(barlows, items.Barlow);
        Add(reticles, items.Reticle);
        Add(count - catalogue.Count, Another);
        return RandomProblems.InAnotherOrder(catalogue, dice.Random);

        OracleItem Another(string id)
        {
            OracleItem[] eyepieces = [.. catalogue.Where(item => item.Kind == OracleKind.Eyepiece && !item.IsReticle)];
            return dice.Weighted(
                (catalogue.Count > 0 ? 18 : 0, () => items.Alike(dice.Pick(catalogue), id)),
                (eyepieces.Length > 0 ? 14 : 0, () => items.OfLessPower(dice.Pick(eyepieces), id)),
                (eyepieces.Length > 0 ? 8 : 0, () => items.OfOtherField(dice.Pick(eyepieces), id)),
                (60, () => items.Eyepiece(id)))();
        }

        void Add(int number, Func<string, OracleItem> draw)
        {
            for (int i = 0; i < number; i++)
            {
                catalogue.Add(draw(ids.Dequeue()));
            }
        }
    }

    private OracleOwned[] Owned(ItemDraw items, OracleItem[] catalogue, bool reticleAsked)
    {
        List<OracleOwned> owned = [];
        int count = richInBarlows ? dice.Int(2, 4) : wellEquipped ? dice.Int(4, 6) : dice.Weighted((24, 0), (24, 1), (20, 2), (14, 3), (8, 4), (5, 5), (5, 6));
        OracleItem[] eyepieces = [.. catalogue.Where(item => item.Kind == OracleKind.Eyepiece && !item.IsReticle)];
        while (owned.Count < count)
        {
            string id = $"own-{owned.Count + 1}";
            Func<string, OracleItem> draw = dice.Weighted<Func<string, OracleItem>>(
                (50, items.Eyepiece),
                (eyepieces.Length > 0 ? 20 : 0, own => items.OfOtherField(dice.Pick(eyepieces), own)),
                (richInBarlows || wellEquipped ? 0 : 20, items.Barlow),
                (wellEquipped ? 0 : 9, items.Zoom),
                (reticleAsked ? 5 : 1, items.Reticle));
            owned.Add(new OracleOwned(id, draw(id) with { Price = dice.Chance(0.5) ? 0 : 10 * dice.Int(1, 12) }));
        }

        if (dice.Chance(0.12))
        {
            owned.Add(new OracleOwned(dice.Pick(catalogue).Id, null));
        }

        return RandomProblems.InAnotherOrder(owned.Take(6), dice.Random);
    }

    private OracleLimits Limits(OracleItem[] catalogue)
    {
        decimal typical = catalogue.Average(item => item.Price);
        decimal budget = typical * (decimal)(roomy
            ? dice.Between(2.5, 6)
            : dice.Weighted((5, dice.Between(0, 0.4)), (20, dice.Between(0.7, 1.5)), (45, dice.Between(1.5, 3)), (30, dice.Between(3, 7))));
        return new OracleLimits
        {
            Budget = dice.Chance(0.8) ? Math.Round(budget / 10) * 10 : Math.Round(budget, 2),
            MaxPurchases = roomy
                ? dice.Pick<int?>(null, 3, 4, 4)
                : dice.Weighted<int?>((32, null), (4, 0), (16, 1), (18, 2), (15, 3), (15, 4)),
            MaxBarlows = dice.Weighted<int?>((40, null), (8, 0), (20, 1), (richInBarlows ? 90 : 32, 2)),
            AllowedOverlaps = dice.Weighted<int?>((50, null), (28, 0), (8, 1), (6, 2), (4, 3), (4, 4)),
            MaxPricePerItem = dice.Chance(roomy ? 0.05 : 0.15) ? Math.Round(typical * (decimal)dice.Between(0.7, 2) / 10) * 10 : null,
            MaxItemMassGrams = dice.Chance(roomy ? 0.05 : 0.15) ? 50 * dice.Int(3, 12) : null,
        };
    }

    private OraclePreferences Preferences(OracleItem[] catalogue, bool zoomsAllowed, double? reticleLeastPower) => new()
    {
        Prefer = dice.Weighted<OraclePrefer?>(
            (12, null),
            (14, OraclePrefer.Comfort),
            (14, OraclePrefer.LowPrice),
            (15, OraclePrefer.WideField),
            (15, OraclePrefer.LongEyeRelief),
            (15, OraclePrefer.LightWeight),
            (15, OraclePrefer.Parfocal)),
        LeastStep = dice.Chance(0.4) ? null : roomy || richInBarlows ? dice.Pick(1.0, 1.05, 1.1, 1.15) : dice.Pick(1.1, 1.15, 1.2, 1.25, 1.3, 1.5),
        EnoughStep = dice.Chance(0.3) ? null : dice.Pick(1.0, 1.1, 1.2, 1.2, 1.3, 1.4, 1.4, 1.6, 1.75, 2, 2, 2.5),
        LeastApparentFieldDeg = dice.Chance(0.12) ? dice.Pick(42.0, 45, 50, 60, 65) : null,
        Barlows = dice.Weighted<OracleUse?>((60, null), (30, OracleUse.Allow), (10, OracleUse.Avoid)),
        Zooms = zoomsAllowed ? OracleUse.Allow : dice.Pick<OracleUse?>(null, OracleUse.Avoid),
        Exclude = dice.Chance(0.15) ? [.. Some(catalogue, dice.Int(1, 3)).Select(item => item.Id)] : [],
        ReticleLeastPower = reticleLeastPower,
    };

    private OracleProblem WithDemands(OracleProblem problem)
    {
        OracleSearch search = new(problem);
        List<string> mustInclude = [];
        if (dice.Chance(0.14))
        {
            OracleItem[] barlows = [.. search.Candidates.Where(item => item.Kind == OracleKind.Barlow)];
            IReadOnlyList<OracleItem> likely = barlows.Length > 1 && dice.Chance(0.3) ? barlows
                : search.Candidates.Count > 0 && dice.Chance(0.85) ? search.Candidates
                : problem.Catalogue;
            mustInclude.AddRange(Some(likely, dice.Weighted((70, 1), (30, 2))).Select(item => item.Id));
        }

        return problem with
        {
            Preferences = problem.Preferences with { MustInclude = mustInclude, MustFrame = Frames(search) },
        };
    }

    private OracleFrame[] Frames(OracleSearch search)
    {
        int everything = (1 << search.Candidates.Count) - 1;
        int count = dice.Weighted((72, 0), (20, 1), (8, 2));
        return [.. Enumerable.Range(1, count).Select(Frame)];

        OracleFrame Frame(int number)
        {
            string? telescope = dice.Chance(0.4) ? dice.Pick(search.Problem.Telescopes).Name : null;
            double widest = search.WidestField(everything, telescope);
            double width = dice.Chance(0.1) ? widest : Math.Round((widest * dice.Between(0.5, 1.06)) + 0.02, 2);
            return new OracleFrame($"Field {number}", Math.Clamp(width, 0.01, 20), telescope);
        }
    }

    private IEnumerable<T> Some<T>(IReadOnlyList<T> items, int count) =>
        RandomProblems.InAnotherOrder(items, dice.Random).Take(count);
}
