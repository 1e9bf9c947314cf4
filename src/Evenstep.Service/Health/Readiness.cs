namespace Evenstep.Service.Health;

/// <summary>Whether the service can answer.</summary>
internal sealed class Readiness
{
    public bool IsReady { get; private set; }

    public string Detail { get; private set; } = "The warm-up has not finished yet.";

    public void Succeed() => IsReady = true;

    public void Fail() => Detail = "The warm-up failed; the log says how.";
}
