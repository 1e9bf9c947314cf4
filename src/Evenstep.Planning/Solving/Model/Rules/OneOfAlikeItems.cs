using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>Of alike items at most one is bought.</summary>
internal static class OneOfAlikeItems
{
    public static void Keep(PurchaseModel model)
    {
        foreach (var choice in model.Space.Choices.Where(choice => choice.Items.Length > 1))
        {
            model.Cp.Add(LinearExpr.Sum(choice.Items.Select(model.Bought)) == model.Chosen(choice));
        }
    }
}
