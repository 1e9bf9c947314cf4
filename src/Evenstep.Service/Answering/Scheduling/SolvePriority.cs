namespace Evenstep.Service.Answering.Scheduling;

/// <summary>How urgent a solve is; the first goes before the second, the second before the third.</summary>
internal enum SolvePriority
{
    /// <summary>Somebody asked for this alone, and waits.</summary>
    Single,

    /// <summary>A line of a batch: one of many, none of which is urgent.</summary>
    Batch,

    /// <summary>Nobody waits for it.</summary>
    Background,
}
