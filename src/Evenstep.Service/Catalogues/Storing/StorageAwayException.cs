using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Errors;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Catalogues.Storing;

/// <summary>The storage cannot do what is asked of it now, but may later.</summary>
internal sealed class StorageAwayException : AnsweredException
{
    /// <summary>How long to wait for the storage: it is looked for twice a second.</summary>
    private static readonly TimeSpan Retry = TimeSpan.FromSeconds(2);

    public StorageAwayException()
    {
    }

    public StorageAwayException(string message)
        : base(message)
    {
    }

    public StorageAwayException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    public override ProblemResult Answer => new(
        ProblemKind.StorageAway, $"{Message} Send the request again a little later. Requests that change nothing are answered meanwhile.")
    {
        RetryAfter = Retry,
    };

    public static StorageAwayException NotReadYet() =>
        new("The stored catalogues have not been read yet, so that it is not known whether there is such a catalogue.");

    public static StorageAwayException Busy() => new("Others were changing this catalogue all the time. Nothing was stored.");
}
