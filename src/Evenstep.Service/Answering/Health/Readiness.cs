using Evenstep.Service.Catalogues.Storing;

namespace Evenstep.Service.Answering.Health;

/// <summary>Whether the service can answer: it has answered requests of its own, and knows what is stored.</summary>
internal sealed class Readiness(CatalogueRegistry registry)
{
    private volatile bool hasAnswered;
    private volatile bool hasFailed;

    public bool IsReady => hasAnswered && registry.IsWhole;

    public string Detail => hasFailed ? "The warm-up failed; the log says how."
        : !hasAnswered ? "The warm-up has not finished yet."
        : registry.Damage is { } damage ? $"{damage} Whoever runs the service must mend it; the log says more."
        : "The stored catalogues have not been read yet; the log says why, if it takes long.";

    public void Succeed() => hasAnswered = true;

    public void Fail() => hasFailed = true;
}
