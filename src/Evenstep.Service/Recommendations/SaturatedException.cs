namespace Evenstep.Service.Recommendations;

/// <summary>More is asked than can be answered in time.</summary>
internal sealed class SaturatedException : Exception
{
    public SaturatedException()
    {
    }

    public SaturatedException(string message)
        : base(message)
    {
    }

    public SaturatedException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    /// <param name="retryAfter">When it may be better.</param>
    public SaturatedException(TimeSpan retryAfter)
        : this("More requests wait than can be answered in time.") => RetryAfter = retryAfter;

    public TimeSpan RetryAfter { get; } = TimeSpan.FromSeconds(1);
}
