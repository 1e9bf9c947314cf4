namespace Evenstep.Service.Http.Logging;

/// <summary>The feature of a request that gets no line in the log, for there are too many of its kind: they are summed up instead.</summary>
internal sealed class SummedUp
{
    public static SummedUp Instance { get; } = new();
}
