using Evenstep.Planning.Tests.Oracle;
using Evenstep.Service.Catalogues.Csv;
using Evenstep.Service.Catalogues.Warnings;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Tests.Catalogues.Csv;

public sealed class CsvFuzzTests
{
    private const int Draws = 1500;

    private static readonly byte[] Demo = ReadCsv.Export([.. ReadCsv.DemoItems.Where((_, i) => i % 12 == 0)]);

    private static readonly byte[][] Splices =
    [
        "\""u8.ToArray(), ","u8.ToArray(), ";"u8.ToArray(), "\n"u8.ToArray(), "\r"u8.ToArray(), "\0"u8.ToArray(), [0xFF], [0xC3], "\"\""u8.ToArray(),
        "1e999"u8.ToArray(), "\uFEFF"u8.ToArray(), "'"u8.ToArray(), "attributes."u8.ToArray(), ",,,,,,"u8.ToArray(), "-"u8.ToArray(), [0xED, 0xA0, 0x80],
    ];

    [Fact]
    public void Random_bytes_are_refused_and_never_break_anything()
    {
        var dice = new Dice(new Random(77_001));
        for (var i = 0; i < Draws; i++)
        {
            var bytes = new byte[dice.Int(0, 300)];
            dice.Random.NextBytes(bytes);
            AssertAnswered(bytes, mustRefuse: true);
        }
    }

    [Fact]
    public void Bytes_that_look_like_a_CSV_are_refused_and_never_break_anything()
    {
        var dice = new Dice(new Random(77_002));
        for (var i = 0; i < Draws; i++)
        {
            AssertAnswered([.. Enumerable.Range(0, dice.Int(0, 200)).Select(_ => (byte)dice.Pick<char>([.. "\",;\r\n'ab1.= \t"]))], mustRefuse: true);
        }
    }

    [Fact]
    public void A_spoilt_CSV_is_read_or_refused_and_never_breaks_anything()
    {
        var dice = new Dice(new Random(77_003));
        var refused = Enumerable.Range(0, Draws).Count(_ => AssertAnswered(Spoil(dice), mustRefuse: false));

        Assert.InRange(refused, Draws / 2, Draws - 1);
    }

    /// <summary>Returns whether it was refused.</summary>
    private static bool AssertAnswered(byte[] bytes, bool mustRefuse)
    {
        var read = ReadCsv.Of(bytes);
        var changes = CsvItems.Read(bytes, CsvPurpose.Changes, refuseUnknown: true, new Faults(), new WarningList());

        Assert.All(read.Faults.Shown.Concat(changes.Faults.Shown), fault =>
        {
            Assert.Matches(@"\A/line/[1-9][0-9]*(/|\z)", fault.Pointer);
            Assert.Matches(@"(?s)\A\S.{10,}[.?]\z", fault.Message.In(Language.English));
            Assert.DoesNotContain(fault.Message.In(Language.English), char.IsControl);
        });
        Assert.True(read.Faults.Any || (!mustRefuse && read.Catalogue is { Items.Count: > 0 }), Convert.ToHexString(bytes));
        return read.Faults.Any;
    }

    private static byte[] Spoil(Dice dice)
    {
        List<byte> bytes = [.. Demo];
        for (var i = dice.Int(1, 3); i > 0; i--)
        {
            var at = dice.Int(0, bytes.Count - 1);
            bytes.RemoveRange(at, Math.Min(dice.Pick(0, 0, 1, 1, 5, 60), bytes.Count - at));
            bytes.InsertRange(at, dice.Pick(Splices));
        }

        return [.. bytes];
    }
}
