namespace Evenstep.Service.Features.Batches;

/// <summary>A line of a batch, as received.</summary>
/// <param name="Number">Its place among all lines, from 1.</param>
/// <param name="Text">What it says, without its end; null if it is too long to be kept.</param>
internal sealed record BatchLine(long Number, ReadOnlyMemory<byte>? Text)
{
    public const int MostMebibytes = 2;
    public const int MostBytes = MostMebibytes * 1024 * 1024;
}
