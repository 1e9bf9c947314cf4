using Evenstep.Planning.Solving.Model.Rules;
using Evenstep.Planning.Solving.Model.Subproblems;

namespace Evenstep.Planning.Solving.Model;

/// <summary>The allowed sets, as the model knows them before any cut.</summary>
internal static class AllowedSet
{
    /// <summary>All rules of an allowed set that are not kept by cuts; the number of Barlows is kept by which sets of them are
    /// settled. Each names the rule that it keeps, where the sentence stands.</summary>
    public static readonly Action<Master>[] Rules =
    [
        OneOfAlikeItems.Keep,
        Budget.Keep,
        PurchaseCount.Keep,
        OneReticle.Keep,
        OverlapCount.Keep,
        MustInclude.Keep,
        MustFrame.Keep,
        ReticleDemand.Keep,
    ];
}
