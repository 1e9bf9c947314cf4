using Evenstep.Service.Answering.Metrics;

namespace Evenstep.Service.Answering.Admission;

/// <summary>Counts what is let in and what is refused.</summary>
internal sealed class AdmissionMeter
{
    /// <summary>How many requests were refused on arrival, by reason.</summary>
    public const string Refusals = "evenstep.refusals";

    private readonly Action<RefusalReason> refusals;

    public AdmissionMeter(ServiceMeter meter, Admissions admissions)
    {
        refusals = meter.Counts<RefusalReason>(Refusals, "reason", "Requests refused at the door, by reason.");
        meter.Watch("evenstep.requests.in_flight", () => admissions.InFlight, null, "Requests under way, batches included.");
        meter.Watch("evenstep.requests.bodies", () => admissions.BodyBytes, "By", "Bodies that are being received or are in use.");
    }

    public void Refused(RefusalReason reason) => refusals(reason);
}
