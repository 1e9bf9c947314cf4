namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>Every item that must be included is bought.</summary>
internal static class MustInclude
{
    public static void Keep(PurchaseModel model)
    {
        foreach (var choice in model.Space.Choices.Where(choice => choice.IsDemanded))
        {
            model.Cp.AddBoolAnd([model.Chosen(choice)]);
        }
    }
}
