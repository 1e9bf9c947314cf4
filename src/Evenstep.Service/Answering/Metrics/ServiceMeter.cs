using System.Diagnostics.Metrics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Answering.Metrics;

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

    private const string OutcomeTag = "outcome";
    private const string ResultTag = "result";
    private const string VerdictTag = "verdict";

    /// <summary>Seconds. Most solves take milliseconds; the work limit ends them after about ten seconds.</summary>
    private static readonly double[] SolveBuckets = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 25];

    private readonly Meter meter;
    private readonly List<Action> zeros = [];
    private readonly Action<Outcome> answers;
    private readonly Histogram<double> solves;
    private readonly Action<Lookup> lookups;
    private readonly Action<CertificateOutcome> certificates;
    private volatile bool hasBegun;

    public ServiceMeter(IMeterFactory factory, SolveGate gate)
    {
        meter = factory.Create(Name);
        answers = Counts<Outcome>(Answers, OutcomeTag, "Answers given, by outcome.");
        solves = meter.CreateHistogram(
            SolveDuration, "s", "How long solving took.", advice: new InstrumentAdvice<double> { HistogramBucketBoundaries = SolveBuckets });
        lookups = Counts<Lookup>(
            Lookups, ResultTag, "Answers found in the cache (hit), made (miss), or waited for while another caller's was made (joined).");
        certificates = Counts<CertificateOutcome>(Certificates, VerdictTag, "Plans given to the second engine, by verdict.");
        Watch("evenstep.gate.in_use", () => gate.InUse, null, "Solves that run, certificates in the background included.");
        Watch("evenstep.gate.waiting", () => gate.Waiting, null, "Solves that wait for a processor, to begin or to go on.");
        Watch("evenstep.gate.held", () => gate.HeldBytes, "By", "Memory that the solves under way hold.");
    }

    /// <summary>Counts from now on, for what warms the service up is nobody's request. Shows every count from nought, for a
    /// rate cannot be told of a count that is not there.</summary>
    public void Begin()
    {
        hasBegun = true;
        zeros.ForEach(show => show());
    }

    public void Answered(Outcome outcome) => answers(outcome);

    public void Solved(TimeSpan took)
    {
        if (hasBegun)
        {
            solves.Record(took.TotalSeconds);
        }
    }

    public void LookedUp(Lookup result) => lookups(result);

    public void Certified(CertificateOutcome outcome) => certificates(outcome);

    /// <summary>Makes what counts by words, once the counting has begun. To be called before it begins.</summary>
    /// <param name="name">Of the instrument.</param>
    /// <param name="tag">What tells the words apart.</param>
    /// <param name="description">For whoever watches.</param>
    /// <returns>What is called to count one.</returns>
    public Action<T> Counts<T>(string name, string tag, string description)
        where T : struct, Enum
    {
        var counter = meter.CreateCounter<long>(name, description: description);
        zeros.Add(() =>
        {
            foreach (var value in Enum.GetValues<T>())
            {
                Add(0, value);
            }
        });
        return value => Add(1, value);

        void Add(long count, T value)
        {
            if (hasBegun)
            {
                counter.Add(count, new KeyValuePair<string, object?>(tag, Words<T>.Of(value)));
            }
        }
    }

    /// <summary>Shows a number as it is when somebody looks.</summary>
    public void Watch(string name, Func<long> number, string? unit, string description) =>
        meter.CreateObservableUpDownCounter(name, number, unit, description);
}

/// <summary>How looking for an answer in the cache ended.</summary>
internal enum Lookup
{
    Hit,
    Miss,
    Joined,
}

/// <summary>What came of giving a plan to the second engine.</summary>
internal enum CertificateOutcome
{
    Agreed,
    Disagreed,
    Undecided,
    Dropped,
}
