using System.Text;
using Evenstep.Planning.Budgets;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Metrics;

namespace Evenstep.Service.Answering.Solving;

/// <summary>The second engine: true if it agrees with a plan, false if not, null if its work limit came first.</summary>
internal delegate bool? SecondProver(PurchaseProblem problem, Plan plan, WorkBudget budget);

/// <summary>Has plans certified by the second engine, and logs a disagreement so that it can be replayed.</summary>
internal sealed partial class Certificates(SecondProver prover, CertifySettings settings, ServiceMeter meter, ILogger<Certificates> logger)
{
    /// <summary>Whether there is a proof to confirm.</summary>
    public static bool IsProvable(Plan plan) => plan is { IsProved: true, Values: not null };

    /// <summary>True if the second engine agrees; null if it cannot tell, or if there is no proof to confirm.</summary>
    /// <exception cref="DisagreementException">It does not agree: one of the two engines is wrong, logged in full.</exception>
    public bool? Certify(PlanningCase asked, Plan plan, WorkBudget budget)
    {
        if (!IsProvable(plan))
        {
            return null;
        }

        var certified = prover(asked.Problem, plan, budget.Part(settings.Limit));
        meter.Certified(OutcomeOf(certified));
        return certified is false ? throw Disagreement(asked, plan) : certified;
    }

    private static CertificateOutcome OutcomeOf(bool? certified) => certified switch
    {
        true => CertificateOutcome.Agreed,
        false => CertificateOutcome.Disagreed,
        null => CertificateOutcome.Undecided,
    };

    private DisagreementException Disagreement(PlanningCase asked, Plan plan)
    {
        LogDisagreement(
            plan.Outcome, string.Join(", ", plan.Purchases), plan.Values, plan.Wish,
            asked.Catalogue.Id, asked.Catalogue.Version, Encoding.UTF8.GetString(asked.Body.Span));
        return new DisagreementException("The second engine knows better than a plan said to be proved.");
    }

    [LoggerMessage(
        LogLevel.Error,
        "The second engine disagrees with a plan. Outcome: {Outcome}. Purchases: {Purchases}. Values: {Values}. Wish: {Wish}. Catalogue: {CatalogueId}, " +
        "version {CatalogueVersion}. Request: {Body}")]
    private partial void LogDisagreement(
        Outcome outcome, string purchases, StageValues? values, WideViewWish? wish, string? catalogueId, string? catalogueVersion, string body);
}
