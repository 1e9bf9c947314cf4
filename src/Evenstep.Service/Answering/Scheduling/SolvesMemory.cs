using Evenstep.Service.Http.Negotiation;

namespace Evenstep.Service.Answering.Scheduling;

/// <summary>
/// The memory of the solves under way, and of the answers that are being sent. There is always room left for the eldest solve
/// to take as much as one may, so that it can end and give back what it holds; the others go on only while they, and the answers,
/// leave it that room. What is at the first level, or holds little, does not wait for it: small requests would wait for large ones.
/// </summary>
/// <param name="settings">What they may hold together, and each alone.</param>
/// <param name="answers">Those that are being sent.</param>
internal sealed class SolvesMemory(SchedulerSettings settings, AnswersBeingSent answers)
{
    /// <summary>The part of what one solve may hold that is little.</summary>
    private const int LittlePart = 64;

    /// <summary>In the order in which they began.</summary>
    private readonly List<ScheduledSolve> begun = [];

    /// <summary>In bytes.</summary>
    public long Held => begun.Sum(solve => solve.Held);

    public void Enter(ScheduledSolve solve)
    {
        if (!solve.IsBackground)
        {
            begun.Add(solve);
        }
    }

    public void Leave(ScheduledSolve solve) => begun.Remove(solve);

    public bool HasRoomFor(ScheduledSolve solve) => solve.IsBackground || solve.Level == 0 || begun.Count == 0 || solve == begun[0]
        || solve.Held < settings.SolveBytes / LittlePart
        || Held - begun[0].Held + answers.Bytes + settings.SolveBytes <= settings.MostBytes;
}
