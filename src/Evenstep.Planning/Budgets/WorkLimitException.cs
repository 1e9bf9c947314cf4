namespace Evenstep.Planning.Budgets;

/// <summary>The work limit ended before any allowed set was found, and before it was proved that there is none.</summary>
public sealed class WorkLimitException : Exception
{
    public WorkLimitException()
    {
    }

    public WorkLimitException(string message)
        : base(message)
    {
    }

    public WorkLimitException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
