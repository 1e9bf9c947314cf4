using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Evenstep.Planning.Tests.Oracle;
using Evenstep.Service.Catalogues.Csv;

namespace Evenstep.Service.Tests.Catalogues.Csv;

public sealed class CsvExportTests
{
    private const int Draws = 400;

    private static readonly string[] Awkward =
    [
        "", "'", "''", "=1+1", "'=1+1", "''=1+1", "+5", "-3", "@x", "\tx", "\rx", "\nx", "a\r\nb", "\"", "\"\"a", "a,b", "a;b", " a ", "\u00A0a\u00A0", "'a'",
        "\uFF1Dx", "\uD83D\uDD2D", "null", "TRUE", "007", "a\u2028b",
    ];

    private static readonly string[] TextFields = ["name", "line", "url", "sku", "gtin", "parfocalGroup"];

    [Fact]
    public void The_demo_catalogue_comes_back_as_it_was() => AssertComesBack(ReadCsv.DemoItems);

    [Fact]
    public void Items_with_awkward_texts_come_back_as_they_were()
    {
        var dice = new Dice(new Random(20_251));
        for (var i = 0; i < Draws; i++)
        {
            AssertComesBack([.. Enumerable.Range(0, dice.Int(0, 6)).Select(number => Draw(dice, number))]);
        }
    }

    [Theory]
    [InlineData("=cmd()")]
    [InlineData("+1")]
    [InlineData("-1")]
    [InlineData("@sum")]
    [InlineData("\t=1")]
    [InlineData("\uFF1D1")]
    public void No_cell_begins_as_a_formula(string text)
    {
        var item = JsonNode.Parse("""{"id":"a","kind":"barlow","factors":[2],"barrel":"2in","price":1}""")!;
        item["attributes"] = new JsonObject { ["x"] = text };

        var csv = Encoding.UTF8.GetString(ReadCsv.Export([JsonElement.Parse(item.ToJsonString())]));

        Assert.Contains("'" + text, csv, StringComparison.Ordinal);
    }

    [Fact]
    public void A_text_is_marked_only_where_it_must_be_and_always_unmarked_to_itself() => Assert.All(Awkward.Append("Wide 12 mm").Append("'tis"), text =>
    {
        Assert.Equal(text, SpreadsheetText.Unmarked(SpreadsheetText.Marked(text)));
        Assert.Equal(
            text.TrimStart('\'') is var bare && (bare.Length == 0 || "=+-@\t\r\n\uFF1D".Contains(bare[0], StringComparison.Ordinal)),
            SpreadsheetText.Marked(text) != text);
    });

    [Fact]
    public void Only_columns_that_some_item_uses_are_written()
    {
        Assert.Equal("id,kind,price,barrel\r\n", Encoding.UTF8.GetString(ReadCsv.Export([])));
        Assert.Equal(
            "id,kind,name,price,focalLengthMm,apparentFieldDeg,eyeReliefMm,barrel,fastestFocalRatio,line,massGrams,sku\r\n"
            + "pennywhelk-7-0,eyepiece,Pennywhelk 7.0 mm,10.90,7,40,4.6,0.965in,8,Pennywhelk,20,PEN-070\r\n",
            Encoding.UTF8.GetString(ReadCsv.Export([ReadCsv.DemoItems[1]])));
    }

    private static void AssertComesBack(IReadOnlyList<JsonElement> items)
    {
        var read = ReadCsv.Of(ReadCsv.Export(items));

        Assert.Empty(read.Errors);
        Assert.Equal(items.Count, read.Rows.Count);
        Assert.All(items.Zip(read.Rows), pair => Assert.True(JsonElement.DeepEquals(pair.First, pair.Second), $"{pair.First} became {pair.Second}"));
    }

    private static JsonElement Draw(Dice dice, int number)
    {
        var item = JsonNode.Parse(dice.Pick<string>(
            """{"kind":"eyepiece","focalLengthMm":12.50,"apparentFieldDeg":6e1,"eyeReliefMm":0,"barrel":"2in","purpose":"reticle"}""",
            """{"kind":"zoom","shortestFocalLengthMm":8,"longestFocalLengthMm":24,"apparentFieldAtShortestDeg":60,"apparentFieldAtLongestDeg":40.25""" +
            ""","eyeReliefMm":15,"barrel":"1.25in"}""",
            """{"kind":"barlow","factors":[1.5,2,3],"barrel":"0.965in","inStock":false}"""))!.AsObject();
        item["id"] = $"{dice.Pick("", "'", "=", "-")}{number}";
        item["price"] = JsonNode.Parse(dice.Pick("0", "1", "12.50", "99999.99"));
        foreach (var name in TextFields.Where(_ => dice.Chance(0.4)))
        {
            item[name] = dice.Pick("=x", "'x", " x ", "a,b", "\"q\"", "12", "\u00FC");
        }

        if (dice.Chance(0.7))
        {
            item["attributes"] = new JsonObject(
                Enumerable.Range(1, dice.Int(1, 4)).Select(
                    i => KeyValuePair.Create($"{dice.Pick("", " ", "a,", "=", "\"")}{i}", (JsonNode?)dice.Pick(Awkward))));
        }

        return JsonElement.Parse(item.ToJsonString());
    }
}
