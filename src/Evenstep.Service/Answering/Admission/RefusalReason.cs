using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Answering.Admission;

/// <summary>Why a request is refused on arrival.</summary>
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
        ProblemKind.Saturated, ErrorMessage.Of("error/detail/saturated")));

    private static readonly FixedProblem ShareUsedUp = new(new ProblemResult(
        ProblemKind.ShareUsedUp, ErrorMessage.Of("error/detail/share-used-up")));

    private static readonly FixedProblem RateUsedUp = new(new ProblemResult(
        ProblemKind.RateUsedUp, ErrorMessage.Of("error/detail/rate-used-up")));

    public static FixedProblem Of(RefusalReason reason) => reason switch
    {
        RefusalReason.Saturated => Saturated,
        RefusalReason.ShareUsedUp => ShareUsedUp,
        _ => RateUsedUp,
    };
}
