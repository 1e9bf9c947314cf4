using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Errors;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Catalogues.Storing;

/// <summary>What is stored is damaged or gone: only whoever runs the service can mend it.</summary>
internal sealed class StorageBrokenException : AnsweredException
{
    public StorageBrokenException()
    {
    }

    public StorageBrokenException(string message)
        : base(message)
    {
    }

    public StorageBrokenException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    public override ProblemResult Answer => new(
        ProblemKind.StorageBroken,
        $"{Message} Nothing was changed. Sending the request again does not help: whoever runs the service must mend it; the log says more. "
        + "What is in memory is answered meanwhile.");
}
