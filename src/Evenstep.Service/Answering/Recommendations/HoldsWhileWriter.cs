using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>Writes how far some inputs may be otherwise without another purchase.</summary>
internal static class HoldsWhileWriter
{
    /// <summary>Null if it was not asked for, or nothing is allowed.</summary>
    public static HoldsWhileAnswer? Write(HoldsWhile? holds) => holds is null ? null : new HoldsWhileAnswer
    {
        SeeingArcsec = IntervalOf(holds.SeeingArcsec, value => (decimal)Rounded.Arcsec((double)value)),
        PupilMm = IntervalOf(holds.PupilMm, value => (decimal)Rounded.Millimetres((double)value)),
        Budget = IntervalOf(holds.Budget, Rounded.Money),
    };

    private static HoldingIntervalAnswer? IntervalOf(HeldInterval? interval, Func<decimal, decimal> round) => interval is null
        ? null
        : new HoldingIntervalAnswer
        {
            From = round(interval.From),
            To = round(interval.To),
            Tried = interval.Tried,
            Below = OtherOf(interval.Below, round),
            Above = OtherOf(interval.Above, round),
        };

    private static OtherPurchasesAnswer? OtherOf(ChangedPlan? changed, Func<decimal, decimal> round) => changed is null ? null : new OtherPurchasesAnswer
    {
        Value = round(changed.Value),
        Outcome = OutcomeOf(changed.Plan),
        ItemIds = [.. (changed.Plan?.Purchases ?? []).Select(item => item.Id)],
        TotalPrice = changed.Plan is { Outcome: not Outcome.Infeasible } plan ? Rounded.Money(plan.Purchases.Sum(item => item.Price)) : null,
    };

    /// <summary>Only what is proved is told.</summary>
    private static ChangedOutcome OutcomeOf(Plan? plan) => plan?.Outcome switch
    {
        null => ChangedOutcome.EmptyRange,
        Outcome.Infeasible => ChangedOutcome.Infeasible,
        Outcome.NothingWorthwhile => ChangedOutcome.NothingWorthwhile,
        _ => ChangedOutcome.Optimal,
    };
}
