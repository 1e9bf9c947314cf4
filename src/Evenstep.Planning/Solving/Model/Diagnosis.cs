using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Rules;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model;

/// <summary>
/// Says why no set of purchases is allowed, and which value of each limit alone would help. Each limit is loosened to its
/// bound, the candidates derived anew, and the least use of it is found: at that value there is a set, and at no value
/// nearer to the one given. (Candidates need not be derived at every value between: a set that uses no more of a limit
/// than some value holds no item that the value would exclude.)
/// </summary>
internal sealed class Diagnosis(PurchaseProblem problem, Candidacy candidacy, Work work)
{
    private const int WidthsPerDegree = 100;

    public Conflicts Run()
    {
        var byId = problem.Catalogue.ToDictionary(item => item.Id);
        var musts = problem.Demands.MustInclude.Select(id => byId[id]).ToArray();
        ImmutableArray<Exclusion> noCandidates = [.. musts.Select(candidacy.ExclusionOf).OfType<Exclusion>()];
        var together = Together(musts.Except(noCandidates.Select(exclusion => exclusion.Item)), out var isDecided);
        return new Conflicts(noCandidates, together, isDecided, NearestOfAll());
    }

    /// <summary>Drops one demand after another while what is left is still impossible: what stays conflicts.</summary>
    private ImmutableArray<Demand> Together(IEnumerable<Item> mustInclude, out bool isDecided)
    {
        isDecided = true;
        ImmutableArray<Demand> demands =
        [
            .. mustInclude.Select(item => new Demand.MustInclude(item)),
            .. problem.Demands.MustFrame.Select((framing, index) => new Demand.MustFrame(framing, index)),
            .. problem.Demands.ReticleLeastPower is { } power ? new Demand[] { new Demand.Reticle(power) } : [],
        ];
        if (IsPossible(demands) is var possible && possible != false)
        {
            isDecided = possible is not null;
            return [];
        }

        foreach (var demand in demands)
        {
            var fewer = demands.Remove(demand);
            var isPossible = IsPossible(fewer);
            isDecided &= isPossible is not null;
            demands = isPossible == false ? fewer : demands;
        }

        return demands;
    }

    /// <summary>Null if the work ends first.</summary>
    private bool? IsPossible(ImmutableArray<Demand> demands)
    {
        var verdict = work.Find(ModelOf(problem with { Demands = OnlyThese(demands) }));
        return verdict.Purchases is not null ? true : verdict.IsProved ? false : null;
    }

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
            Least(limits with { Budget = (decimal)Bounds.Budget.Most }, (_, purchases) => purchases.Sum(item => item.Price), model => model.Sum(Budget.Cents)),
            Least(limits with { MaxPurchases = Limits.MostPurchases }, (_, purchases) => purchases.Length, model => model.Sum(_ => 1)),
            Least(limits with { MaxBarlows = Limits.MostBarlows }, (_, purchases) => purchases.Count(item => item.IsBarlow), model => model.Sum(item => item.IsBarlow ? 1 : 0)),
            Least(limits with { AllowedOverlaps = Limits.MostOverlaps }, (loosened, purchases) => Kit.Of(loosened, purchases).OverlapsThroughPurchases(), model => model.OverlapCount),
            [.. problem.Demands.MustFrame.Select((_, index) => NearestWidth(index))])
        {
            MaxPricePerItem = limits.MaxPricePerItem is null ? Nearest.None<decimal>() : LeastOf(ItemValues(item => (decimal?)item.Price), price => limits with { MaxPricePerItem = price }),
            MaxItemMassGrams = limits.MaxItemMassGrams is null ? Nearest.None<double>() : LeastOf(ItemValues(item => item.MassGrams), grams => limits with { MaxItemMassGrams = grams }),
        };
    }

    private ImmutableArray<T> ItemValues<T>(Func<Item, T?> valueOf)
        where T : struct => [.. problem.Catalogue.Items.Select(valueOf).OfType<T>().Distinct().Order()];

    /// <summary>The least of some values, in order, at which there is a set. The more a limit on single items allows, the more sets
    /// there are, so halving the values finds it.</summary>
    private Nearest<T> LeastOf<T>(ImmutableArray<T> values, Func<T, Limits> limitsAt)
        where T : struct
    {
        var (low, high) = (0, values.Length);
        T? least = null;
        while (low < high)
        {
            var middle = least is null ? high - 1 : (low + high) / 2;
            switch (HasSet(problem with { Limits = limitsAt(values[middle]) }))
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

    /// <summary>Null if the work ends first.</summary>
    private bool? HasSet(PurchaseProblem loose)
    {
        if (ModelIfDemandsAreCandidates(loose) is not { } model)
        {
            return false;
        }

        var verdict = work.Find(model);
        return verdict.Purchases is not null ? true : verdict.IsProved ? false : null;
    }

    private Nearest<T> Least<T>(Limits loosened, Func<PurchaseProblem, ImmutableArray<Item>, T> used, Func<PurchaseModel, LinearExpr> use)
        where T : struct
    {
        var loose = problem with { Limits = loosened };
        if (ModelIfDemandsAreCandidates(loose) is not { } model)
        {
            return Nearest.None<T>();
        }

        model.Cp.Minimize(use(model));
        var verdict = work.Find(model);
        return !verdict.IsProved ? Nearest.Undecided<T>() : verdict.Purchases is { } purchases ? used(loose, purchases) : Nearest.None<T>();
    }

    /// <summary>The widest field that a set meeting all other demands can have there.</summary>
    private Nearest<double> NearestWidth(int index)
    {
        var framing = problem.Demands.MustFrame[index];
        var others = problem with { Demands = problem.Demands with { MustFrame = problem.Demands.MustFrame.RemoveAt(index) } };
        var narrowest = framing with { WidthDeg = Bounds.WidthDeg.Least };
        var any = problem with { Demands = problem.Demands with { MustFrame = problem.Demands.MustFrame.SetItem(index, narrowest) } };
        if (ModelIfDemandsAreCandidates(others, helpingWith: any) is not { } model)
        {
            return Nearest.None<double>();
        }

        var views = MustFrame.ViewsOf(model, framing.TelescopeIndex).Where(view => Width(view) > 0).ToArray();
        var witnesses = views.Select(_ => model.Cp.NewBoolVar("")).ToArray();
        for (var i = 0; i < views.Length; i++)
        {
            model.Cp.AddImplication(witnesses[i], model.Exists(views[i]));
        }

        model.Cp.AddExactlyOne(witnesses);
        model.Cp.Maximize(LinearExpr.WeightedSum(witnesses, views.Select(Width)));
        var verdict = work.Find(model);
        return new Nearest<double>(verdict is { Purchases: { } purchases, IsProved: true } ? WidestOf(others, purchases, framing) : null, verdict.IsProved);
    }

    private static double? WidestOf(PurchaseProblem problem, ImmutableArray<Item> purchases, FramingDemand framing) =>
        Kit.Of(problem, purchases).WidestFieldDeg(framing.TelescopeIndex) is { } widest ? RoundedDown(widest) / (double)WidthsPerDegree : null;

    private static long Width(PossibleView view) => RoundedDown(view.KitView.View.TrueFieldDeg);

    /// <summary>In hundredths of a degree; what is within the tolerance of one counts as it.</summary>
    private static long RoundedDown(double degrees) => (long)Math.Floor(WidthsPerDegree * degrees * (1 + Tolerance.Value));

    /// <summary>The model of a problem with loosened limits, unless an item that must be bought is no candidate even so.</summary>
    private static PurchaseModel? ModelIfDemandsAreCandidates(PurchaseProblem loose, PurchaseProblem? helpingWith = null)
    {
        var candidacy = Candidacy.Of(loose);
        var ids = candidacy.Candidates.Select(item => item.Id).ToHashSet();
        return loose.Demands.MustInclude.All(ids.Contains) ? ModelOf(loose, candidacy, helpingWith ?? loose) : null;
    }

    private static PurchaseModel ModelOf(PurchaseProblem problem) => ModelOf(problem, Candidacy.Of(problem), problem);

    private static PurchaseModel ModelOf(PurchaseProblem problem, Candidacy candidacy, PurchaseProblem helpingWith) =>
        new(PurchaseSpace.Of(problem, candidacy with { Candidates = Helpful.Among(helpingWith, candidacy.Candidates) }));
}
