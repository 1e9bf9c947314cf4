using Evenstep.Planning.Purchases;
using Evenstep.Planning.Solving.Model.Subproblems;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>Keeps <see cref="PurchaseCountRule"/>: what is left of it beside the Barlows settled.</summary>
internal static class PurchaseCount
{
    public static void Keep(Master master) =>
        master.Cp.Add(LinearExpr.Sum(Enumerable.Range(0, master.Settled.Choices.Length).Select(master.Chosen)) <= master.Settled.PurchasesLeft);
}
