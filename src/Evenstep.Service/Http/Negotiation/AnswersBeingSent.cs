namespace Evenstep.Service.Http.Negotiation;

/// <summary>The bytes of the answers that their callers are yet to take, all together.</summary>
internal sealed class AnswersBeingSent
{
    private long bytes;

    public long Bytes => Interlocked.Read(ref bytes);

    /// <summary>Counts an answer until what is returned is disposed of.</summary>
    /// <param name="length">Of the answer, in bytes.</param>
    public IDisposable Count(long length)
    {
        Interlocked.Add(ref bytes, length);
        return new Counted(this, length);
    }

    private sealed class Counted(AnswersBeingSent all, long length) : IDisposable
    {
        private long left = length;

        public void Dispose() => Interlocked.Add(ref all.bytes, -Interlocked.Exchange(ref left, 0));
    }
}
