namespace Evenstep.Service.Recommendations;

/// <summary>Who waits for a solve.</summary>
internal enum Lane
{
    /// <summary>Somebody who asked for this alone.</summary>
    Single,

    /// <summary>Somebody with many requests at once, none of which is urgent.</summary>
    Batch,
}
