namespace Evenstep.Planning.Budgets;

/// <summary>A budget ended in the middle of a work. Whoever began the work catches it and tells what is known by then.</summary>
internal sealed class WorkEndedException : Exception
{
    public WorkEndedException()
    {
    }

    public WorkEndedException(string message)
        : base(message)
    {
    }

    public WorkEndedException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
