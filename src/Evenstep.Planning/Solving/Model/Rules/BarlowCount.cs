namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>Of the items bought at most so many are Barlows.</summary>
internal static class BarlowCount
{
    public static void Keep(PurchaseModel model) =>
        model.Cp.Add(model.Sum(item => item.IsBarlow ? 1 : 0) <= model.Problem.Limits.MaxBarlows);
}
