using System.IO.Pipelines;
using System.Text;
using Evenstep.Service.Features.Batches;

namespace Evenstep.Service.Tests.Features.Batches;

public sealed class BatchLineReaderTests
{
    [Theory]
    [InlineData("a\nb\n", "1 a", "2 b")]
    [InlineData("a\nb", "1 a", "2 b")]
    [InlineData("a\r\nb\r\n", "1 a", "2 b")]
    [InlineData("\n \n\r\n\ta\n\n", "4 \ta")]
    [InlineData("\uFEFFa\nb", "1 a", "2 b")]
    [InlineData("a\n\uFEFFb", "1 a", "2 b")]
    [InlineData("\uFEFF\n\uFEFF")]
    [InlineData("")]
    [InlineData("ä\nö", "1 ä", "2 ö")]
    public async Task Lines_are_told_apart_wherever_the_body_is_cut(string body, params string[] lines)
    {
        var bytes = Encoding.UTF8.GetBytes(body);
        for (var piece = 1; piece <= Math.Max(1, bytes.Length); piece++)
        {
            Assert.Equal(lines, (await ReadAsync(bytes, piece)).Select(line => $"{line.Number} {Encoding.UTF8.GetString(line.Text!.Value.Span)}"));
        }
    }

    [Theory]
    [InlineData(BatchLine.MostBytes, true)]
    [InlineData(BatchLine.MostBytes + 1, false)]
    [InlineData(5 * BatchLine.MostBytes, false)]
    public async Task A_line_has_a_limit_and_the_next_one_is_read_all_the_same(int bytes, bool isTaken)
    {
        var body = Encoding.UTF8.GetBytes($"\uFEFF{new string('x', bytes)}\r\nnext");

        var lines = await ReadAsync(body, 100_000);

        Assert.Equal(isTaken ? bytes : null, lines[0].Text?.Length);
        Assert.Equal("next", Encoding.UTF8.GetString(lines[1].Text!.Value.Span));
    }

    private static async Task<List<BatchLine>> ReadAsync(byte[] body, int piece)
    {
        var pipe = new Pipe();
        var writing = WriteAsync(pipe.Writer, body, piece);
        var lines = await new BatchLineReader(pipe.Reader).ReadAllAsync(CancellationToken.None).ToListAsync();
        await writing;
        return lines;
    }

    private static async Task WriteAsync(PipeWriter writer, byte[] body, int piece)
    {
        foreach (var part in body.Chunk(piece))
        {
            await writer.WriteAsync(part);
        }

        await writer.CompleteAsync();
    }
}
