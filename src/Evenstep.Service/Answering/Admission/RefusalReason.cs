using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Answering.Admission;

/// <summary>Why a request is refused at the door.</summary>
internal enum RefusalReason
{
    /// <summary>Too much is under way.</summary>
    Saturated,

    /// <summary>The caller has too much under way.</summary>
    ShareUsedUp,

    /// <summary>The rate of the caller's key is used up.</summary>
    RateUsedUp,
}

/// <summary>The answers to those who are refused, written once: a refusal must cost next to nothing.</summary>
internal static class RefusalAnswer
{
    private static readonly FixedProblem Saturated = new(new ProblemResult(
        ProblemKind.Saturated,
        "More is asked of this service than it can answer soon. Send the request again after the seconds that `Retry-After` says; "
        + "many requests are better sent as a batch."));

    private static readonly FixedProblem ShareUsedUp = new(new ProblemResult(
        ProblemKind.ShareUsedUp,
        "As many requests of this caller are under way as one caller may have. Wait for an answer before you send the next, or send many as one batch."));

    private static readonly FixedProblem RateUsedUp = new(new ProblemResult(
        ProblemKind.RateUsedUp,
        "The key is used up for now. Wait as long as `Retry-After` says; `RateLimit-Policy` says how often it may be used, and `RateLimit` what is left."));

    public static FixedProblem Of(RefusalReason reason) => reason switch
    {
        RefusalReason.Saturated => Saturated,
        RefusalReason.ShareUsedUp => ShareUsedUp,
        _ => RateUsedUp,
    };
}
