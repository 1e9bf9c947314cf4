using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Errors;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Catalogues.Storing;

/// <summary>The storage has no room left.</summary>
internal sealed class StorageFullException : AnsweredException
{
    public StorageFullException()
    {
    }

    public StorageFullException(string message)
        : base(message)
    {
    }

    public StorageFullException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    public override ProblemResult Answer => new(
        ProblemKind.StorageFull,
        "There is no room left to store this; what was stored before is as it was. "
        + "Delete catalogues that are not needed any more, or tell whoever runs the service.");
}
