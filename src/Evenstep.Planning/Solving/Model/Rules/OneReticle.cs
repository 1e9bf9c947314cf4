namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>Of the items bought at most one is a reticle eyepiece.</summary>
internal static class OneReticle
{
    public static void Keep(PurchaseModel model) =>
        model.Cp.AddAtMostOne(model.Items.Where(item => item.IsReticle).Select(model.Bought));
}
