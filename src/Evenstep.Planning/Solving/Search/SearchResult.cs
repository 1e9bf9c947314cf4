using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Search;

/// <summary>What a search came to.</summary>
public sealed record SearchResult
{
    public static readonly SearchResult NothingAllowed = new() { IsNothingAllowed = true };

    private SearchResult()
    {
    }

    /// <summary>The best plan, proved; null if the search came to something else.</summary>
    public Plan? Plan { get; private init; }

    /// <summary>It is proved that no set is allowed.</summary>
    public bool IsNothingAllowed { get; private init; }

    /// <summary>How far a search came that was too long; null if it found nothing, or was not.</summary>
    public HeadStart? HeadStart { get; private init; }

    /// <summary>The best plan by then, with its bound; null if nothing was found.</summary>
    public Plan? BestFound { get; private init; }

    public static SearchResult Of(Plan plan) => new() { Plan = plan };

    public static SearchResult Unfinished(HeadStart? headStart, Plan? bestFound = null) => new() { HeadStart = headStart, BestFound = bestFound };
}
