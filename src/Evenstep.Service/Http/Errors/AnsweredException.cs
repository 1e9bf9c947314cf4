using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Http.Errors;

/// <summary>A failure of something below the routes that says itself how the caller is answered.</summary>
internal abstract class AnsweredException : Exception
{
    protected AnsweredException()
    {
    }

    protected AnsweredException(string message)
        : base(message)
    {
    }

    protected AnsweredException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    /// <summary>What the caller is told.</summary>
    public abstract ProblemResult Answer { get; }
}
