using System.Buffers;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Evenstep.Service.Http.Negotiation;

namespace Evenstep.Service.Tests.Http.Negotiation;

public sealed class AnswerBytesTests
{
    private const int PieceBytes = 64 * 1024;

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(20_000)]
    public void The_pieces_are_the_answer_in_one(int entries)
    {
        IReadOnlyDictionary<string, int> answer = Enumerable.Range(0, entries).ToDictionary(number => $"item-{number}", number => number);
        var shape = (JsonTypeInfo<IReadOnlyDictionary<string, int>>)JsonSerializerOptions.Web.GetTypeInfo(typeof(IReadOnlyDictionary<string, int>));

        var pieces = AnswerBytes.Of(answer, shape);

        Assert.Equal(JsonSerializer.SerializeToUtf8Bytes(answer, shape), pieces.ToArray());
        foreach (var piece in pieces)
        {
            Assert.InRange(piece.Length, 1, PieceBytes);
        }
    }

    [Fact]
    public void What_is_longer_than_a_piece_has_one_of_its_own()
    {
        using var bytes = new AnswerBytes();
        byte[] first = [1, 2, 3], longer = [.. Enumerable.Range(0, 3 * PieceBytes).Select(i => (byte)(i % 256))];

        bytes.Write(first);
        longer.CopyTo(bytes.GetSpan(longer.Length));
        bytes.Advance(longer.Length);
        bytes.Write(first);

        Assert.Equal([.. first, .. longer, .. first], bytes.All().ToArray());
    }
}
