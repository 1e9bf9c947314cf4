using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>Of the items bought at most so many are Barlows: no larger set of Barlows is ever settled.</summary>
internal static class BarlowCount
{
    public static int Most(PurchaseProblem problem) => problem.Limits.MaxBarlows;
}
