using System.Threading.Channels;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Health;
using Evenstep.Service.Answering.Metrics;

namespace Evenstep.Service.Answering.Solving;

/// <summary>A plan to certify unasked, with what it answers.</summary>
internal sealed record Sample(PlanningCase Asked, Plan Plan);

/// <summary>Takes a share of all plans aside, to be certified when there is time; drops what there is no room for.</summary>
internal sealed class SampleQueue(CertifySettings settings, Readiness readiness, ServiceMeter meter)
{
    /// <summary>Each may hold a body of 2 MiB and the problem made of it.</summary>
    public const int MostWaiting = 16;

    /// <summary>With more the model takes seconds and a gigabyte, which is too much for what nobody asked for.</summary>
    public const int MostCandidates = 300;

    private readonly Channel<Sample> waiting = Channel.CreateBounded<Sample>(new BoundedChannelOptions(MostWaiting) { SingleReader = true });
    private long seen;

    public void Offer(PlanningCase asked, Plan plan)
    {
        // What only warms the service up is no sample.
        if (readiness.IsReady && Certificates.IsProvable(plan) && IsDrawn(Interlocked.Increment(ref seen)) && !TryKeep(asked, plan))
        {
            meter.Certified(CertificateOutcome.Dropped);
        }
    }

    public IAsyncEnumerable<Sample> TakeAllAsync(CancellationToken stopping) => waiting.Reader.ReadAllAsync(stopping);

    private bool TryKeep(PlanningCase asked, Plan plan) =>
        plan.Candidacy.Candidates.Length <= MostCandidates && waiting.Writer.TryWrite(new Sample(asked, plan));

    /// <summary>Evenly spread, and the same ones in every run.</summary>
    private bool IsDrawn(long number) => Math.Floor(number * settings.Share) > Math.Floor((number - 1) * settings.Share);
}
