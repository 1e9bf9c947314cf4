using System.Collections.Immutable;
using Evenstep.Planning.Budgets;

namespace Evenstep.Planning.Purchases;

/// <summary>How a planning ended.</summary>
public enum Outcome
{
    /// <summary>The best set, proved at every stage.</summary>
    Optimal,

    /// <summary>The work limit ended the proof; the bound says how much better a set could be.</summary>
    BestFound,

    /// <summary>Proved that buying nothing is best.</summary>
    NothingWorthwhile,

    /// <summary>Proved that no set is allowed.</summary>
    Infeasible,
}

/// <summary>What was chosen and what was proved of it.</summary>
public sealed record Plan
{
    public required Outcome Outcome { get; init; }

    /// <summary>In ordinal order of ids; empty if infeasible.</summary>
    public required ImmutableArray<Item> Purchases { get; init; }

    public required Candidacy Candidacy { get; init; }

    /// <summary>The values of the stages; null if infeasible.</summary>
    public StageValues? Values { get; init; }

    /// <summary>Why nothing is allowed; null unless infeasible.</summary>
    public Conflicts? Conflicts { get; init; }

    /// <summary>Null if a wide view is not wished for, or nothing gives one.</summary>
    public WideViewWish? Wish { get; init; }

    public bool IsProved => Outcome is not Outcome.BestFound;

    /// <summary>The limit that ended the proof, or the diagnosis of what conflicts; null if neither did.</summary>
    public ReachedLimit? Limit { get; init; }
}

/// <summary>The values by which the best set was chosen, stage by stage.</summary>
/// <param name="LeastLargestStep">The least attainable largest step, or of the step that is enough
/// where that is larger. The best found, where the proof did not end.</param>
/// <param name="Bound">A proven lower bound on it; the same where the proof ended.</param>
/// <param name="LeastMeanExcess">The least mean excess attainable within the leeway of the largest step.</param>
/// <param name="GreatestQuality">The greatest quality attainable within the leeways of both: see <see cref="QualityMeasure"/>. Null
/// where only the price is preferred.</param>
/// <param name="Preference">The preference score of the purchases.</param>
public sealed record StageValues(Step LeastLargestStep, Step Bound, double LeastMeanExcess, double? GreatestQuality, double Preference)
{
    /// <summary>A largest step up to this much wider, in logarithm, is as good, for nobody sees it, and it may cost a second
    /// Barlow: common practice, no source.</summary>
    public const double StepLeeway = 1.15;

    /// <summary>A quality up to this much less is as good: common practice, no source.</summary>
    public const double QualityLeeway = 0.03;

    /// <summary>A mean excess up to this much greater is as good, for no eye sees it: common practice, no source.</summary>
    public const double ExcessLeeway = 0.005;

    /// <summary>The largest step that the later stages must keep to.</summary>
    public Step LargestStepAllowed => LeastLargestStep.Widened(StepLeeway);

    public double MeanExcessAllowed => LeastMeanExcess + ExcessLeeway;

    /// <summary>The quality that the last stages must keep to; null where it is not asked for.</summary>
    public double? QualityRequired => GreatestQuality - QualityLeeway;
}

/// <summary>The wish for a wide view.</summary>
/// <param name="TrueFieldDeg">The true field that grants it, in degrees.</param>
/// <param name="Granted">False if none of the sets that the first stage keeps grants it, so that all of them go on.</param>
public sealed record WideViewWish(double TrueFieldDeg, bool Granted)
{
    /// <summary>This much of the widest field to be had is wide: common practice, no source.</summary>
    public const double ShareOfWidest = 0.75;

    /// <summary>The true field wished for: a share of the widest that any candidate or owned item gives alone and usable,
    /// in any telescope. Null if there is no wish, or nothing gives any.</summary>
    public static double? TrueFieldWished(PurchaseProblem problem, ImmutableArray<Item> candidates)
    {
        if (!problem.WishesWideView)
        {
            return null;
        }

        var alone = problem.Telescopes.SelectMany(telescope =>
            problem.Owned.Where(item => item.Ocular is not null).SelectMany(item => KitViews.Alone(problem, telescope, item, false))
            .Concat(candidates.Where(item => item.Ocular is not null).SelectMany(item => KitViews.Alone(problem, telescope, item, true))));
        return alone.Where(view => view.IsUsable).Max(view => (double?)view.View.TrueFieldDeg) * ShareOfWidest;
    }
}

/// <summary>Why no set is allowed, and what would help.</summary>
/// <param name="NoCandidates">Items that must be bought but are no candidates: each conflicts by itself.</param>
/// <param name="Together">Demands that cannot be met together within the limits; without any one of them, the rest can, if that is decided.</param>
/// <param name="IsTogetherDecided">False if the work ended first: then fewer of these demands may conflict, or, where none is named, some.</param>
/// <param name="Nearest">The nearest value of each limit that alone would make a set possible.</param>
public sealed record Conflicts(
    ImmutableArray<Exclusion> NoCandidates, ImmutableArray<Demand> Together, bool IsTogetherDecided, NearestLimits Nearest);

/// <summary>One demand on the kit.</summary>
public abstract record Demand
{
    public sealed record MustInclude(Item Item) : Demand;

    public sealed record MustFrame(FramingDemand Framing, int Index) : Demand;

    public sealed record Reticle(double LeastPower) : Demand;
}

/// <summary>The value of a limit that is nearest to the one given and alone would make a set possible.</summary>
/// <param name="Value">Null if there is none within the bounds, and where it was not decided.</param>
/// <param name="IsDecided">Whether the value, or that there is none, was proved. False if the work ended first.</param>
public readonly record struct Nearest<T>(T? Value, bool IsDecided)
    where T : struct
{
    /// <summary>Proved.</summary>
    public static implicit operator Nearest<T>(T value) => new(value, IsDecided: true);
}

/// <summary>What may be said of a nearest value, beside the value.</summary>
public static class Nearest
{
    /// <summary>It is proved that no value within the bounds makes a set possible.</summary>
    public static Nearest<T> None<T>()
        where T : struct => new(null, IsDecided: true);

    /// <summary>The work ended first.</summary>
    public static Nearest<T> Undecided<T>()
        where T : struct => default;
}

/// <summary>For each limit the value nearest to the one given that alone would make a set possible, the candidates derived anew.</summary>
/// <param name="Budget">In the catalogue's currency.</param>
/// <param name="MaxPurchases">A count.</param>
/// <param name="MaxBarlows">A count.</param>
/// <param name="AllowedOverlaps">A count of pairs.</param>
/// <param name="WidthDeg">For each framing demand in turn, in degrees, to two decimals, rounded down.</param>
public sealed record NearestLimits(
    Nearest<decimal> Budget, Nearest<int> MaxPurchases, Nearest<int> MaxBarlows, Nearest<int> AllowedOverlaps, ImmutableArray<Nearest<double>> WidthDeg)
{
    /// <summary>The most that one item may cost; none also where that is not limited.</summary>
    public Nearest<decimal> MaxPricePerItem { get; init; } = Nearest.None<decimal>();

    /// <summary>The most that one item may weigh, in grams; none also where that is not limited.</summary>
    public Nearest<double> MaxItemMassGrams { get; init; } = Nearest.None<double>();

    /// <summary>Whether every value is decided.</summary>
    public bool IsDecided => Budget.IsDecided && MaxPurchases.IsDecided && MaxBarlows.IsDecided && AllowedOverlaps.IsDecided
        && MaxPricePerItem.IsDecided && MaxItemMassGrams.IsDecided && WidthDeg.All(width => width.IsDecided);
}
