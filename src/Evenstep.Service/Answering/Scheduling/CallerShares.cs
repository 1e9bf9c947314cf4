namespace Evenstep.Service.Answering.Scheduling;

/// <summary>What one caller gets of the processors at one priority, while any of the caller's solves is there.</summary>
internal sealed class CallerShare
{
    /// <summary>How long the caller's solves have run. Whoever comes anew begins with what the least served of the others has had.</summary>
    public TimeSpan Ran { get; set; }

    /// <summary>How many solves wait or run.</summary>
    public int Solves { get; set; }

    /// <summary>How many of them have begun.</summary>
    public int Begun { get; set; }
}

/// <summary>The shares of all callers who have solves, at each priority.</summary>
internal sealed class CallerShares
{
    private readonly Dictionary<(SolvePriority Priority, string Caller), CallerShare> shares = [];

    /// <summary>One solve more: the share it belongs to.</summary>
    public CallerShare Enter(SolveClaim claim)
    {
        var key = (claim.Priority, claim.Caller);
        if (!shares.TryGetValue(key, out var share))
        {
            var others = shares.Where(other => other.Key.Priority == claim.Priority).Select(other => other.Value.Ran);
            share = new CallerShare { Ran = others.DefaultIfEmpty().Min() };
            shares.Add(key, share);
        }

        share.Solves++;
        return share;
    }

    /// <summary>One solve less; with the last of them the share is forgotten.</summary>
    public void Leave(SolveClaim claim)
    {
        var key = (claim.Priority, claim.Caller);
        if (--shares[key].Solves == 0)
        {
            shares.Remove(key);
        }
    }
}
