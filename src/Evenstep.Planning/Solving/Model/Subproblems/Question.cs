using System.Collections.Immutable;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model.Subproblems;

/// <summary>What is asked for: some allowed set within these limits, or the one of least measure.</summary>
internal sealed record Question
{
    /// <summary>Any allowed set.</summary>
    public static readonly Question Anything = new();

    /// <summary>The largest step is at most this.</summary>
    public Step MostStep { get; private init; } = Step.Unlimited;

    /// <summary>The mean excess is at most this.</summary>
    public double MostExcess { get; private init; } = double.PositiveInfinity;

    /// <summary>The quality is at least this, by <see cref="QualityMeasure"/>; not asked for where that is null.</summary>
    public double LeastQuality { get; private init; } = double.NegativeInfinity;

    public QualityMeasure? QualityMeasure { get; private init; }

    /// <summary>The total price is at most this, besides the budget.</summary>
    public Money MostTotalPrice { get; init; } = Money.MaxValue;

    /// <summary>Pairs of views that may overlap; null for as many as the problem allows.</summary>
    public int? AllowedOverlaps { get; init; }

    /// <summary>True fields that some view must have, besides what is demanded.</summary>
    public ImmutableArray<FramingDemand> Framings { get; init; } = [];

    /// <summary>Measures that must be at most so much.</summary>
    public ImmutableArray<(Measure Measure, long Most)> AtMost { get; init; } = [];

    /// <summary>The set of least measure is asked for; null if any will do.</summary>
    public Measure? Least { get; init; }

    /// <summary>Whether the single items behind a choice matter, and not only the cheapest.</summary>
    public bool TellsItemsApart => Least is not null || !AtMost.IsEmpty;

    /// <summary>Within the tolerance, so that rounding decides nothing.</summary>
    public Question KeepingTo(Step largestStep) => this with { MostStep = largestStep.WithTolerance };

    /// <summary>Within the tolerance, so that rounding decides nothing.</summary>
    public Question WithExcessUpTo(double meanExcess) => this with { MostExcess = meanExcess + Tolerance.Value };

    /// <summary>Within the tolerance, so that rounding decides nothing.</summary>
    public Question WithQualityFrom(QualityMeasure measure, double quality) =>
        this with { QualityMeasure = measure, LeastQuality = quality - Tolerance.Value };

    /// <summary>Granting the wish for a wide view.</summary>
    public Question WithField(double trueFieldDeg) => this with { Framings = Framings.Add(new FramingDemand(Name: null, trueFieldDeg)) };

    public Question Below(Measure measure, long most) => this with { AtMost = AtMost.Add((measure, most)) };
}

/// <summary>What came of a question.</summary>
/// <param name="Purchases">A set within the limits, in ordinal order of ids; null if none was found.</param>
/// <param name="IsDecided">That there is none, or that the one found is of least measure where that was asked.</param>
internal readonly record struct Answer(ImmutableArray<Item>? Purchases, bool IsDecided)
{
    public static readonly Answer None = new(null, IsDecided: true);

    public static readonly Answer Undecided = new(null, IsDecided: false);

    public bool IsNone => Purchases is null && IsDecided;
}
