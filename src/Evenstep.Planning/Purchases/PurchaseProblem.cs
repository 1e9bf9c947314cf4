using System.Collections.Immutable;
using Evenstep.Planning.Optics;

namespace Evenstep.Planning.Purchases;

/// <summary>
/// Everything needed to plan purchases, and nothing that needs further preparation: the same problem always gets the
/// same plan, in whatever order its items were listed.
/// </summary>
public sealed record PurchaseProblem
{
    public const int MostTelescopes = 4;
    public const int MostOwned = 100;
    public const int MostCatalogueItems = 3000;
    public const int MostDemands = 20;

    /// <summary>One to four.</summary>
    public required ImmutableArray<TelescopeInUse> Telescopes { get; init; }

    public required Observer Observer { get; init; }

    /// <summary>What the observer has already; kept in ordinal order of ids.</summary>
    public required ImmutableArray<Item> Owned
    {
        get;
        init => field = value.Sort((a, b) => string.CompareOrdinal(a.Id, b.Id));
    }

    /// <summary>What the shop sells. It may list owned items too: they are no candidates.</summary>
    public required Assortment Catalogue { get; init; }

    public required Limits Limits { get; init; }

    public Preferences Preferences { get; init; } = new();

    public Demands Demands { get; init; } = new();

    /// <summary>What overlaps are judged by.</summary>
    public Step LeastStep => Step.Of(Preferences.LeastStep);

    /// <summary>No step up to this is worth money.</summary>
    public Step EnoughStep => Step.Of(Preferences.EnoughStep);

    /// <summary>The share that is served is a matter of half a step that is enough, but of at least this step: common practice, no source.</summary>
    private static readonly Step LeastServedStep = Step.Of(1.2);

    /// <summary>Mismatches that matter.</summary>
    public MismatchLimits MismatchLimits => new(EnoughStep.Half, Step.Max(EnoughStep, LeastServedStep).Half);

    /// <summary>Whether a view with the widest field to be had is wished for.</summary>
    public bool WishesWideView => Observer.Observes.Contains(Interest.LargeNebulae);
}

/// <summary>What must not be exceeded.</summary>
public sealed record Limits
{
    public const int MostPurchases = 8;
    public const int MostBarlows = 4;
    public const int MostOverlaps = 20;

    /// <summary>For all purchases together, in the catalogue's currency, with at most two decimal places.</summary>
    public required decimal Budget
    {
        get;
        init => (field, ExactBudget) = (value, Money.Of(value));
    }

    public int MaxPurchases { get; init; } = 3;

    public int MaxBarlows { get; init; } = 1;

    public decimal? MaxPricePerItem
    {
        get;
        init => (field, ExactMaxPricePerItem) = (value, value is { } price ? Money.Of(price) : null);
    }

    public double? MaxItemMassGrams { get; init; }

    /// <summary>How many pairs of views may overlap in which a bought item takes part.</summary>
    public int AllowedOverlaps { get; init; }

    /// <summary>The budget as the planner reckons with it.</summary>
    internal Money ExactBudget { get; private init; }

    /// <summary>The most allowed for one item as the planner reckons with it.</summary>
    internal Money? ExactMaxPricePerItem { get; private init; }
}

/// <summary>What decides between sets of purchases whose steps are equally good.</summary>
public enum Prefer
{
    /// <summary>Views with nothing against them, then the price.</summary>
    Comfort,

    /// <summary>The price alone.</summary>
    LowPrice,

    /// <summary>Views with nothing against them and wide apparent fields, then the price.</summary>
    WideField,

    /// <summary>Views with nothing against them and long eye relief, then the price.</summary>
    LongEyeRelief,

    /// <summary>Views with nothing against them, then the mass, then the price.</summary>
    LightWeight,

    /// <summary>Views with nothing against them, then the number of parfocal groups, then the price.</summary>
    Parfocal,
}

/// <summary>How the observer likes a kit to be.</summary>
public sealed record Preferences
{
    public Prefer Prefer { get; init; }

    /// <summary>Powers closer than this ratio repeat one another: common practice, no source.</summary>
    public double LeastStep { get; init; } = 1.15;

    /// <summary>A step of up to this ratio is as good as none: common practice, no source.</summary>
    public double EnoughStep { get; init; } = 1.5;

    public double? LeastApparentFieldDeg { get; init; }

    public bool AvoidBarlows { get; init; }

    public bool AvoidZooms { get; init; } = true;

    /// <summary>Ids of items not to be bought.</summary>
    public ImmutableHashSet<string> Exclude { get; init; } = [];
}

/// <summary>What the kit must have once the purchases are made.</summary>
public sealed record Demands
{
    /// <summary>Ids of catalogue items that must be bought, in ordinal order.</summary>
    public ImmutableArray<string> MustInclude
    {
        get;
        init => field = value.Sort(string.CompareOrdinal);
    }
    = [];

    public ImmutableArray<FramingDemand> MustFrame { get; init; } = [];

    /// <summary>The least power a reticle eyepiece of the kit must give, or null if none is asked for.</summary>
    public double? ReticleLeastPower { get; init; }
}

/// <summary>Some usable view must be at least so wide.</summary>
/// <param name="Name">What is to be framed.</param>
/// <param name="WidthDeg">The least true field, in degrees.</param>
/// <param name="TelescopeIndex">The place, from 0, of the telescope it must be in; null for any.</param>
public sealed record FramingDemand(string? Name, double WidthDeg, int? TelescopeIndex = null);
