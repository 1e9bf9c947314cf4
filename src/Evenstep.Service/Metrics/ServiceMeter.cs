using System.Diagnostics.Metrics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Admission;
using Evenstep.Service.Reading;
using Evenstep.Service.Scheduling;

namespace Evenstep.Service.Metrics;

/// <summary>Counts and times what the service does, for whoever watches it.</summary>
internal sealed class ServiceMeter
{
    public const string Name = "Evenstep";

    /// <summary>How many answers were given, by outcome.</summary>
    public const string Answers = "evenstep.answers";

    /// <summary>How long solving took.</summary>
    public const string SolveDuration = "evenstep.solve.duration";

    /// <summary>How many answers were found in the cache, had to be made, or were made for somebody else meanwhile.</summary>
    public const string Lookups = "evenstep.cache.lookups";

    /// <summary>How many plans were certified, by verdict.</summary>
    public const string Certificates = "evenstep.certificates";

    /// <summary>How many requests were refused at the door, by reason.</summary>
    public const string Refusals = "evenstep.refusals";

    private const string OutcomeTag = "outcome";
    private const string ReasonTag = "reason";
    private const string ResultTag = "result";
    private const string VerdictTag = "verdict";

    /// <summary>Seconds. Most solves take milliseconds; the work limit ends them after about ten seconds.</summary>
    private static readonly double[] SolveBuckets = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 25];

    private readonly Counter<long> answers;
    private readonly Histogram<double> solves;
    private readonly Counter<long> lookups;
    private readonly Counter<long> certificates;
    private readonly Counter<long> refusals;
    private volatile bool hasBegun;

    public ServiceMeter(IMeterFactory factory, SolveGate gate, Admissions admissions)
    {
        var meter = factory.Create(Name);
        answers = meter.CreateCounter<long>(Answers, description: "Answers given, by outcome.");
        solves = meter.CreateHistogram(
            SolveDuration, "s", "How long solving took.", advice: new InstrumentAdvice<double> { HistogramBucketBoundaries = SolveBuckets });
        lookups = meter.CreateCounter<long>(Lookups, description: "Answers found in the cache (hit), made (miss), or waited for while another caller's was made (joined).");
        certificates = meter.CreateCounter<long>(Certificates, description: "Plans given to the second engine, by verdict.");
        refusals = meter.CreateCounter<long>(Refusals, description: "Requests refused at the door, by reason.");
        meter.CreateObservableUpDownCounter("evenstep.requests.in_flight", () => admissions.InFlight, description: "Requests under way, batches included.");
        meter.CreateObservableUpDownCounter("evenstep.requests.bodies", () => admissions.BodyBytes, "By", "Bodies that are being received or are in use.");
        meter.CreateObservableUpDownCounter("evenstep.gate.in_use", () => gate.InUse, description: "Solves that run, certificates in the background included.");
        meter.CreateObservableUpDownCounter("evenstep.gate.waiting", () => gate.Waiting, description: "Solves that wait for a processor, to begin or to go on.");
        meter.CreateObservableUpDownCounter("evenstep.gate.held", () => gate.HeldBytes, "By", "Memory that the solves under way hold.");
    }

    /// <summary>Counts from now on, for what warms the service up is nobody's request. Shows every count from nought, for a
    /// rate cannot be told of a count that is not there.</summary>
    public void Begin()
    {
        hasBegun = true;
        ShowZeros<Outcome>(answers, OutcomeTag);
        ShowZeros<Lookup>(lookups, ResultTag);
        ShowZeros<Verdict>(certificates, VerdictTag);
        ShowZeros<RefusalReason>(refusals, ReasonTag);
    }

    public void Answered(Outcome outcome) => Add(answers, 1, OutcomeTag, outcome);

    public void Solved(TimeSpan took)
    {
        if (hasBegun)
        {
            solves.Record(took.TotalSeconds);
        }
    }

    public void LookedUp(Lookup result) => Add(lookups, 1, ResultTag, result);

    public void Certified(Verdict verdict) => Add(certificates, 1, VerdictTag, verdict);

    public void Refused(RefusalReason reason) => Add(refusals, 1, ReasonTag, reason);

    private void ShowZeros<T>(Counter<long> counter, string tag)
        where T : struct, Enum
    {
        foreach (var value in Enum.GetValues<T>())
        {
            Add(counter, 0, tag, value);
        }
    }

    private void Add<T>(Counter<long> counter, long count, string tag, T value)
        where T : struct, Enum
    {
        if (hasBegun)
        {
            counter.Add(count, new KeyValuePair<string, object?>(tag, Words<T>.Of(value)));
        }
    }
}

/// <summary>How looking for an answer in the cache ended.</summary>
internal enum Lookup
{
    Hit,
    Miss,
    Joined,
}

/// <summary>What came of giving a plan to the second engine.</summary>
internal enum Verdict
{
    Agreed,
    Disagreed,
    Undecided,
    Dropped,
}
