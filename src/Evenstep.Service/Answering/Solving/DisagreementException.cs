namespace Evenstep.Service.Answering.Solving;

/// <summary>The two engines disagree on a plan.</summary>
internal sealed class DisagreementException : Exception
{
    public DisagreementException()
    {
    }

    public DisagreementException(string message)
        : base(message)
    {
    }

    public DisagreementException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
