namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>The sum of prices is at most the budget.</summary>
internal static class Budget
{
    public static void Keep(Master master) =>
        master.Cp.Add(master.Sum(item => item.Cents) <= Math.Min(ToCents(master.Problem.Limits.Budget), master.Settled.Question.MostCents));

    /// <summary>Money has at most two decimal places, so hundredths are exact.</summary>
    public static long ToCents(decimal money) => (long)(money * 100);
}
