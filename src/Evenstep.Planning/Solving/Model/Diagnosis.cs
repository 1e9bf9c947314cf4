using System.Collections.Immutable;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model;

/// <summary>
/// Says why no set of purchases is allowed, and which value of each limit alone would help. Each limit is loosened to its
/// bound, the candidates derived anew, and the least use of it is found: at that value there is a set, and at no value
/// nearer to the one given. (Candidates need not be derived at every value between: a set that uses no more of a limit
/// than some value holds no item that the value would exclude.)
/// </summary>
internal sealed class Diagnosis(PurchaseProblem problem, Candidacy candidacy, WorkBudget budget)
{
    private const int WidthsPerDegree = 100;

    public Conflicts Run()
    {
        var byId = problem.Catalogue.ToDictionary(item => item.Id);
        var musts = problem.Demands.MustInclude.Select(id => byId[id]).ToArray();
        ImmutableArray<Exclusion> noCandidates = [.. musts.Select(candidacy.ExclusionOf).OfType<Exclusion>()];
        var together = Together(musts.Except(noCandidates.Select(exclusion => exclusion.Item)));
        return new Conflicts(noCandidates, together ?? [], IsTogetherDecided: together is not null, NearestOfAll());
    }

    /// <summary>Drops one demand after another while what is left is still impossible: what stays conflicts. Null where that is
    /// not decided.</summary>
    private ImmutableArray<Demand>? Together(IEnumerable<Item> mustInclude)
    {
        ImmutableArray<Demand> demands =
        [
            .. mustInclude.Select(item => new Demand.MustInclude(item)),
            .. problem.Demands.MustFrame.Select((framing, index) => new Demand.MustFrame(framing, index)),
            .. problem.Demands.ReticleLeastPower is { } power ? new Demand[] { new Demand.Reticle(power) } : [],
        ];
        switch (IsPossible(demands))
        {
            case true:
                return [];
            case null:
                return null;
        }

        foreach (var demand in demands)
        {
            var fewer = demands.Remove(demand);
            switch (IsPossible(fewer))
            {
                case false:
                    demands = fewer;
                    break;
                case null:
                    return null;
            }
        }

        return demands;
    }

    private bool? IsPossible(ImmutableArray<Demand> demands) => HasSet(problem with { Demands = OnlyThese(demands) });

    private static Demands OnlyThese(ImmutableArray<Demand> demands) => new()
    {
        MustInclude = [.. demands.OfType<Demand.MustInclude>().Select(demand => demand.Item.Id)],
        MustFrame = [.. demands.OfType<Demand.MustFrame>().Select(demand => demand.Framing)],
        ReticleLeastPower = demands.OfType<Demand.Reticle>().FirstOrDefault()?.LeastPower,
    };

    private NearestLimits NearestOfAll()
    {
        var limits = problem.Limits;
        return new NearestLimits(
            Least(limits with { Budget = (decimal)Bounds.Budget.Most }, Measure.Price, purchases => purchases.Sum(item => item.Price)),
            Least(limits with { MaxPurchases = Limits.MostPurchases }, Measure.Count, purchases => purchases.Length),
            LeastBarlows(),
            LeastOverlaps(),
            [.. problem.Demands.MustFrame.Select((_, index) => NearestWidth(index))])
        {
            MaxPricePerItem = limits.MaxPricePerItem is null ? Nearest.None<decimal>()
                : LeastOf(ItemValues(item => (decimal?)item.Price), price => limits with { MaxPricePerItem = price }),
            MaxItemMassGrams = limits.MaxItemMassGrams is null ? Nearest.None<double>()
                : LeastOf(ItemValues(item => item.MassGrams), grams => limits with { MaxItemMassGrams = grams }),
        };
    }

    private ImmutableArray<T> ItemValues<T>(Func<Item, T?> valueOf)
        where T : struct => [.. problem.Catalogue.Items.Select(valueOf).OfType<T>().Distinct().Order()];

    /// <summary>The more a limit on single items allows, the more sets there are.</summary>
    private Nearest<T> LeastOf<T>(ImmutableArray<T> values, Func<T, Limits> limitsAt)
        where T : struct => Halved(values, value => HasSet(problem with { Limits = limitsAt(value) }));

    /// <summary>The first of some values, in order, at which there is a set: there is one at every later value too.</summary>
    private static Nearest<T> Halved<T>(ImmutableArray<T> values, Func<T, bool?> hasSet)
        where T : struct
    {
        var (low, high) = (0, values.Length);
        T? least = null;
        while (low < high)
        {
            var middle = least is null ? high - 1 : (low + high) / 2;
            switch (hasSet(values[middle]))
            {
                case true:
                    (least, high) = (values[middle], middle);
                    break;
                case false:
                    low = middle + 1;
                    break;
                default:
                    return Nearest.Undecided<T>();
            }
        }

        return new Nearest<T>(least, IsDecided: true);
    }

    /// <summary>Null if it is not decided.</summary>
    private bool? HasSet(PurchaseProblem loose) =>
        FinderOf(loose, loose) is not { } finder ? false : IsSome(finder.Any(Question.Anything));

    private static bool? IsSome(Answer answer) => answer.Purchases is not null ? true : answer.IsDecided ? false : null;

    private Nearest<T> Least<T>(Limits loosened, Measure measure, Func<ImmutableArray<Item>, T> used)
        where T : struct
    {
        var loose = problem with { Limits = loosened };
        if (FinderOf(loose, loose) is not { } finder)
        {
            return Nearest.None<T>();
        }

        var answer = finder.Least(Question.Anything, measure);
        return !answer.IsDecided ? Nearest.Undecided<T>() : answer.Purchases is { } purchases ? used(purchases) : Nearest.None<T>();
    }

    /// <summary>Sets of fewer Barlows are asked first.</summary>
    private Nearest<int> LeastBarlows()
    {
        var loose = problem with { Limits = problem.Limits with { MaxBarlows = Limits.MostBarlows } };
        if (FinderOf(loose, loose) is not { } finder)
        {
            return Nearest.None<int>();
        }

        foreach (var sets in finder.Sets.GroupBy(barlows => barlows.Length))
        {
            var answer = finder.Any(sets, Question.Anything);
            if (!answer.IsNone)
            {
                return answer.Purchases is null ? Nearest.Undecided<int>() : sets.Key;
            }
        }

        return new Nearest<int>(null, finder.IsComplete);
    }

    private Nearest<int> LeastOverlaps()
    {
        var loose = problem with { Limits = problem.Limits with { AllowedOverlaps = Limits.MostOverlaps } };
        return FinderOf(loose, loose) is { } finder
            ? Halved([.. Enumerable.Range(0, Limits.MostOverlaps + 1)], count => IsSome(finder.Any(Question.Anything with { AllowedOverlaps = count })))
            : Nearest.None<int>();
    }

    /// <summary>The widest field that a set meeting all other demands can have there.</summary>
    private Nearest<double> NearestWidth(int index)
    {
        var framing = problem.Demands.MustFrame[index];
        var others = problem with { Demands = problem.Demands with { MustFrame = problem.Demands.MustFrame.RemoveAt(index) } };
        var narrowest = framing with { WidthDeg = Bounds.WidthDeg.Least };
        var any = problem with { Demands = problem.Demands with { MustFrame = problem.Demands.MustFrame.SetItem(index, narrowest) } };
        if (FinderOf(others, helpingWith: any) is not { } finder)
        {
            return Nearest.None<double>();
        }

        return finder.TrueFieldsDeg(framing.TelescopeIndex) is { } fields
            ? Halved(
                [.. fields.Select(RoundedDown).Where(width => width > 0).Distinct().OrderDescending().Select(Degrees)],
                width => IsSome(finder.Any(Question.Anything with { Framings = [framing with { WidthDeg = width }] })))
            : Nearest.Undecided<double>();
    }

    private static double Degrees(long width) => width / (double)WidthsPerDegree;

    /// <summary>In hundredths of a degree; what is within the tolerance of one counts as it.</summary>
    private static long RoundedDown(double degrees) => (long)Math.Floor(WidthsPerDegree * degrees * (1 + Tolerance.Value));

    /// <summary>Of a problem with loosened limits, unless an item that must be bought is no candidate even so. Each demand
    /// needs at most one Barlow.</summary>
    private Finder? FinderOf(PurchaseProblem loose, PurchaseProblem helpingWith)
    {
        var anew = Candidacy.Of(loose);
        var ids = anew.Candidates.Select(item => item.Id).ToHashSet();
        var demands = helpingWith.Demands.MustFrame.Length + (helpingWith.Demands.ReticleLeastPower is null ? 0 : 1);
        return loose.Demands.MustInclude.All(ids.Contains)
            ? Finder.Of(PurchaseSpace.Of(loose, anew with { Candidates = Helpful.Among(helpingWith, anew.Candidates) }, budget), demands)
            : null;
    }
}
