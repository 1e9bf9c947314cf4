using System.Globalization;
using Evenstep.Service.Answering.Pictures;

namespace Evenstep.Service.Tests.Answering.Pictures;

public sealed class TypesettingTests
{
    private const int Rounds = 400;

    public static TheoryData<string> Names => [.. HostileNames.All];

    [Theory]
    [MemberData(nameof(Names))]
    public void What_is_cut_fits_and_no_letter_is_cut_in_half(string name)
    {
        var clean = Typesetting.Clean(name);
        foreach (var width in new double[] { 60, 100, 160, 330 })
        {
            var cut = Typesetting.Cut(clean, Face.Plain, width);

            Assert.True(TextWidth.Of(cut, Face.Plain) <= width, $"{cut} is too wide");
            Assert.True(cut == clean || cut.EndsWith('…'));
            Assert.All(ElementsOf(cut.TrimEnd('…').TrimEnd()), element => Assert.Contains(element, ElementsOf(clean)));
        }
    }

    [Fact]
    public void A_sentence_is_broken_at_its_spaces_and_loses_nothing()
    {
        const string sentence = "Never look at the Sun through a telescope without a proper filter over its front.";

        var lines = Typesetting.Break(sentence, Face.Quiet, 200);

        Assert.True(lines.Length > 1);
        Assert.Equal(sentence, string.Join(' ', lines));
        Assert.All(lines, line => Assert.True(TextWidth.Of(line, Face.Quiet) <= 200));
    }

    [Fact]
    public void What_does_not_fit_into_the_lines_allowed_is_cut() =>
        Assert.EndsWith("…", Assert.Single(Typesetting.Break("one two three four five six seven", Face.Quiet, 100, mostLines: 1)), StringComparison.Ordinal);

    [Fact]
    public void Labels_in_rows_never_touch_whatever_they_are()
    {
        var random = new Random(11);
        for (var round = 0; round < Rounds; round++)
        {
            var rows = new LabelRows(14, 346);
            List<(int Row, double From, double To)> placed = [];
            for (var i = 0; i < 40; i++)
            {
                var (wanted, width) = ((400 * random.NextDouble()) - 20, 332 * random.NextDouble());
                var place = rows.Place(wanted, width)!.Value;
                placed.Add((place.Row, place.Centre - (width / 2), place.Centre + (width / 2)));
            }

            Assert.All(placed, one => Assert.True(one.From >= 14 - 1e-9 && one.To <= 346 + 1e-9));
            Assert.All(
                placed.Index(),
                one => Assert.DoesNotContain(
                    placed.Skip(one.Index + 1), other => other.Row == one.Item.Row && other.From < one.Item.To && one.Item.From < other.To));
            Assert.Equal(placed.Max(one => one.Row) + 1, rows.Count);
        }
    }

    [Fact]
    public void A_label_that_may_only_be_in_a_full_row_is_not_placed()
    {
        var rows = new LabelRows(0, 100);

        Assert.Equal(new LabelPlace(0, 50), rows.Place(50, 60, mostRows: 1));
        Assert.Null(rows.Place(60, 30, mostRows: 1));
        Assert.Equal(new LabelPlace(0, 93), rows.Place(95, 14, mostRows: 1));
    }

    private static HashSet<string> ElementsOf(string text)
    {
        var elements = new HashSet<string>();
        for (var all = StringInfo.GetTextElementEnumerator(text); all.MoveNext();)
        {
            elements.Add(all.GetTextElement());
        }

        return elements;
    }
}
