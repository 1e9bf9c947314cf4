using System.Buffers;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace Evenstep.Service.Http.Negotiation;

/// <summary>
/// Takes in the bytes of an answer piece by piece. An answer may have thirty megabytes: in one array that grows it would take
/// three times as much, and the pool would keep the largest arrays for every thread.
/// </summary>
internal sealed class AnswerBytes : IBufferWriter<byte>, IDisposable
{
    /// <summary>Below the size from which arrays are collected only with the eldest of the heap.</summary>
    private const int PieceBytes = 64 * 1024;

    private readonly List<byte[]> pieces = [];
    private byte[] open = ArrayPool<byte>.Shared.Rent(PieceBytes);
    private int taken;

    /// <summary>An answer as JSON.</summary>
    public static ReadOnlySequence<byte> Of<T>(T answer, JsonTypeInfo<T> shape)
    {
        using var bytes = new AnswerBytes();
        using var writer = new Utf8JsonWriter(bytes, new JsonWriterOptions { Encoder = shape.Options.Encoder, SkipValidation = true });
        JsonSerializer.Serialize(writer, answer, shape);
        writer.Flush();
        return bytes.All();
    }

    public void Advance(int count) => taken += count;

    public Memory<byte> GetMemory(int sizeHint = 0)
    {
        MakeRoom(sizeHint);
        return open.AsMemory(taken);
    }

    public Span<byte> GetSpan(int sizeHint = 0)
    {
        MakeRoom(sizeHint);
        return open.AsSpan(taken);
    }

    public void Dispose() => ArrayPool<byte>.Shared.Return(open);

    /// <summary>All that was written.</summary>
    public ReadOnlySequence<byte> All()
    {
        Close();
        if (pieces.Count <= 1)
        {
            return pieces.Count == 0 ? ReadOnlySequence<byte>.Empty : new ReadOnlySequence<byte>(pieces[0]);
        }

        var first = new Piece(pieces[0], before: null);
        var last = pieces.Skip(1).Aggregate(first, (before, piece) => new Piece(piece, before));
        return new ReadOnlySequence<byte>(first, 0, last, last.Memory.Length);
    }

    private void MakeRoom(int sizeHint)
    {
        if (open.Length - taken >= Math.Max(1, sizeHint))
        {
            return;
        }

        Close();
        if (open.Length < sizeHint)
        {
            ArrayPool<byte>.Shared.Return(open);
            open = ArrayPool<byte>.Shared.Rent(sizeHint);
        }
    }

    private void Close()
    {
        if (taken > 0)
        {
            pieces.Add(open[..taken]);
            taken = 0;
        }
    }

    private sealed class Piece : ReadOnlySequenceSegment<byte>
    {
        public Piece(byte[] bytes, Piece? before)
        {
            Memory = bytes;
            if (before is not null)
            {
                RunningIndex = before.RunningIndex + before.Memory.Length;
                before.Next = this;
            }
        }
    }
}
