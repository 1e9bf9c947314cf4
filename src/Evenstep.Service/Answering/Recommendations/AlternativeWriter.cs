using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>Writes the best plan without one purchase.</summary>
internal static class AlternativeWriter
{
    /// <summary>Null if it was not asked for, or not found.</summary>
    public static WithoutItemAnswer? Write(Item purchase, Solved solved) =>
        solved.Alternatives.FirstOrDefault(one => one.Without.Equals(purchase)) is { Plan: { } plan } alternative
            ? Write(plan, plan.Outcome == Outcome.Infeasible ? null : Kit.Of(alternative.Problem, plan.Purchases))
            : null;

    private static WithoutItemAnswer Write(Plan plan, Kit? kit)
    {
        var figures = kit is null ? null : KitWriter.FiguresOf(kit.FiguresIn(plan.Candidacy.Telescopes));
        return new WithoutItemAnswer
        {
            Outcome = plan.Outcome,
            TotalPrice = kit is null ? null : Rounded.Money(kit.TotalPrice),
            ItemIds = [.. plan.Purchases.Select(item => item.Id)],
            LargestStep = figures?.LargestStep,
            MeanMismatchPercent = figures?.MeanMismatchPercent,
            ServedPercent = figures?.ServedPercent,
            ComfortablePercent = figures?.ComfortablePercent,
        };
    }
}
