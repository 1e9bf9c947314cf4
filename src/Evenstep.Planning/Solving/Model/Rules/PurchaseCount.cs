using Evenstep.Planning.Solving.Model.Subproblems;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>At most so many items are bought.</summary>
internal static class PurchaseCount
{
    public static void Keep(Master master) =>
        master.Cp.Add(LinearExpr.Sum(Enumerable.Range(0, master.Settled.Choices.Length).Select(master.Chosen)) <= master.Settled.PurchasesLeft);
}
