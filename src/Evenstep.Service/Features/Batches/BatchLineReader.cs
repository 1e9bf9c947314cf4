using System.Buffers;
using System.IO.Pipelines;
using System.Runtime.CompilerServices;

namespace Evenstep.Service.Features.Batches;

/// <summary>Takes lines from a body as they come. Never more than one is held, and of one that is too long only the beginning.</summary>
internal sealed class BatchLineReader(PipeReader body)
{
    /// <summary>A byte order mark and a carriage return do not count.</summary>
    private const int MostBytesAround = 4;

    private readonly ArrayBufferWriter<byte> begun = new();
    private long length;
    private long number;

    /// <summary>Every line that is not empty. The last one need not be ended.</summary>
    public async IAsyncEnumerable<BatchLine> ReadAllAsync([EnumeratorCancellation] CancellationToken cancellationToken)
    {
        while (true)
        {
            var read = await body.ReadAsync(cancellationToken);
            var rest = read.Buffer;
            while (rest.PositionOf((byte)'\n') is { } end)
            {
                Append(rest.Slice(0, end));
                rest = rest.Slice(rest.GetPosition(1, end));
                if (Finish() is { } line)
                {
                    yield return line;
                }
            }

            Append(rest);
            body.AdvanceTo(read.Buffer.End);
            if (read.IsCompleted)
            {
                break;
            }
        }

        if (Finish() is { } last)
        {
            yield return last;
        }
    }

    private void Append(ReadOnlySequence<byte> part)
    {
        length += part.Length;
        if (length > BatchLine.MostBytes + MostBytesAround)
        {
            return;
        }

        foreach (var segment in part)
        {
            begun.Write(segment.Span);
        }
    }

    /// <summary>The line that has ended; null if it is empty.</summary>
    private BatchLine? Finish()
    {
        number++;
        var isKept = length == begun.WrittenCount;
        var text = begun.WrittenMemory;
        text = text.Span.StartsWith("\uFEFF"u8) ? text["\uFEFF"u8.Length..] : text;
        text = text.Span.EndsWith("\r"u8) ? text[..^1] : text;
        BatchLine? line = !isKept || text.Length > BatchLine.MostBytes ? new BatchLine(number, null)
            : text.Span.Trim(" \t\r"u8).IsEmpty ? null
            : new BatchLine(number, text.ToArray());
        begun.ResetWrittenCount();
        length = 0;
        return line;
    }
}
