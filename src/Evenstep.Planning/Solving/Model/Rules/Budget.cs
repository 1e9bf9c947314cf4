using Evenstep.Planning.Purchases;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>The sum of prices is at most the budget.</summary>
internal static class Budget
{
    public static void Keep(PurchaseModel model) =>
        model.Cp.Add(model.Sum(Cents) <= ToCents(model.Problem.Limits.Budget));

    /// <summary>Money has at most two decimal places, so hundredths are exact.</summary>
    public static long Cents(Item item) => ToCents(item.Price);

    private static long ToCents(decimal money) => (long)(money * 100);
}
