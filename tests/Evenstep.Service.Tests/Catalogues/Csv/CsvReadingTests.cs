using System.Text;
using System.Text.Json;
using Evenstep.Service.Catalogues.Csv;
using Evenstep.Service.Catalogues.Warnings;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Tests.Catalogues.Csv;

public sealed class CsvReadingTests
{
    private const string Header = "id,kind,price,barrel,focalLengthMm,apparentFieldDeg,eyeReliefMm";
    private const string Good = "a,eyepiece,49.90,1.25in,12.5,52,9";

    private static readonly string AllKinds = string.Join('\n',
        "id,kind,name,price,barrel,focalLengthMm,apparentFieldDeg,eyeReliefMm," +
        "shortestFocalLengthMm,longestFocalLengthMm,apparentFieldAtShortestDeg,apparentFieldAtLongestDeg,factors,inStock,attributes.colour",
        "a,eyepiece,\"Wide, 12 mm\",49.90,1.25in,12,52,9,,,,,,,black",
        "b,zoom,,120,1.25in,,,15,8,24,60,42,,FALSE,",
        "c,barlow,\"Says \"\"2x\"\"\",39,1.25in,,,,,,,,1.5 2,true,");

    public static TheoryData<string, string> Spoilt => new()
    {
        { $"{Header}\na,eyepiece,\"49,90\",1.25in,12.5,52,9", "/line/2/price wrong-type" },
        { $"{Header}\na,eyepiece,49.905,1.25in,12.5,52,9", "/line/2/price too-many-decimals" },
        { $"{Header}\na,eyepiece,,1.25in,12.5,52,9", "/line/2/price missing" },
        { $"{Header}\na,eyepiece,49.90,1.25in,120,52,9", "/line/2/focalLengthMm out-of-range" },
        { $"{Header}\na,eyepiece,49.90,1.25,12.5,52,9", "/line/2/barrel not-one-of" },
        { $"{Header}\na,eyepeice,49.90,1.25in,12.5,52,9", "/line/2/kind not-one-of" },
        { $"{Header}\n{Good}\n\n{Good}", "/line/4/id duplicate" },
        { $"{Header}\na,eyepiece,49.90,1.25in,12,5,52,9", "/line/2 too-many" },
        { $"{Header}\na,eyepiece,49.90", "/line/2 too-few" },
        { $"{Header},price\n{Good},1", "/line/1/price duplicate" },
        { $"{Header},factors\n{Good},2", "/line/2/factors unknown-field" },
        { $"{Header},name\n{Good},\"x", "/line/2 invalid-text" },
        { $"{Header},name\n{Good},\"x\"y", "/line/2 invalid-text" },
        { $"{Header},name\n{Good},a\0b", "/line/2 invalid-text" },
        { $"{Header},inStock\n{Good},yes", "/line/2/inStock wrong-type" },
        { $"{Header},massGrams\n{Good},250 g", "/line/2/massGrams wrong-type" },
        { "id,kind,price,barrel,factors\na,barlow,1,2in,2 x", "/line/2/factors/1 wrong-type" },
        { "id,kind,price,barrel,factors\na,barlow,1,2in,2 2.0", "/line/2/factors/1 duplicate" },
        {
            "id,kind,price,barrel,shortestFocalLengthMm,longestFocalLengthMm,apparentFieldAtShortestDeg,apparentFieldAtLongestDeg,eyeReliefMm\n" +
            "a,zoom,1,2in,24,8,60,40,12",
            "/line/2/shortestFocalLengthMm empty-range"
        },
        { "", "/line/1 missing" },
        { "\n \n", "/line/1 missing" },
    };

    [Fact]
    public void Items_of_every_kind_are_read()
    {
        var read = ReadCsv.Of(AllKinds);

        Assert.Empty(read.Errors);
        Assert.Empty(read.WarningCodes);
        Assert.Equal(
            [
                """{"apparentFieldDeg":52,"attributes":{"colour":"black"},"barrel":"1.25in","eyeReliefMm":9,"focalLengthMm":12""" +
                ""","id":"a","kind":"eyepiece","name":"Wide, 12 mm","price":49.90}""",
                """{"apparentFieldAtLongestDeg":42,"apparentFieldAtShortestDeg":60,"barrel":"1.25in","eyeReliefMm":15,"id":"b","inStock":false""" +
                ""","kind":"zoom","longestFocalLengthMm":24,"price":120,"shortestFocalLengthMm":8}""",
                """{"barrel":"1.25in","factors":[1.5,2],"id":"c","inStock":true,"kind":"barlow","name":"Says \u00222x\u0022","price":39}""",
            ],
            read.Rows.Select(Sorted));
    }

    [Fact]
    public void The_separator_the_line_ends_and_a_byte_order_mark_make_no_difference()
    {
        var semicolons =
            AllKinds.Replace("Wide, 12", "Wide; 12", StringComparison.Ordinal).Replace(',', ';').Replace("Wide; 12", "Wide, 12", StringComparison.Ordinal);
        string[] same =
            [AllKinds.ReplaceLineEndings("\r\n") + "\r\n", "\uFEFF" + AllKinds, semicolons, "sep=;\n" + semicolons, AllKinds + "\n,,,,,,,,,,,,,,\n"];

        Assert.All(same, csv => Assert.Equal(ReadCsv.Of(AllKinds).Rows.Select(Sorted), ReadCsv.Of(csv).Rows.Select(Sorted)));
        Assert.All(same, csv => Assert.Empty(ReadCsv.Of(csv).Errors));
    }

    [Theory]
    [MemberData(nameof(Spoilt))]
    public void What_is_wrong_is_named_by_line_and_column(string csv, string error) => Assert.Equal([error], ReadCsv.Of(csv).Errors);

    [Fact]
    public void A_row_is_named_by_the_line_on_which_it_begins()
    {
        var csv = $"{Header},attributes.note\r\n{Good},\"one\r\ntwo\r\n\"\r\n\r\nb,eyepiece,-1,1.25in,12.5,52,9,\r\n";

        Assert.Equal(["/line/6/price out-of-range"], ReadCsv.Of(csv).Errors);
    }

    [Fact]
    public void All_faults_of_all_rows_are_told_at_once() => Assert.Equal(
        ["/line/1/price duplicate", "/line/3 too-few", "/line/2/focalLengthMm wrong-type", "/line/2/barrel not-one-of", "/line/4/eyeReliefMm out-of-range"],
        ReadCsv.Of($"{Header},price\na,eyepiece,1,3in,x,52,9,1\nb\nc,eyepiece,1,2in,12,52,99,1").Errors);

    [Fact]
    public void A_column_that_every_row_lacks_is_named_once() => Assert.Equal(
        ["/line/1/price missing", "/line/1/focalLengthMm missing"],
        ReadCsv.Of("id,kind,barrel,eyeReliefMm,apparentFieldDeg\na,eyepiece,2in,12,60\nb,eyepiece,2in,14,60").Errors);

    [Fact]
    public void What_only_another_kind_needs_may_be_lacking() =>
        Assert.Empty(ReadCsv.Of("id,kind,barrel,price,factors\na,barlow,2in,12,2").Errors);

    [Theory]
    [InlineData("12,5", "Write a decimal point: 12.5.")]
    [InlineData("1.299,00", "Give the number alone")]
    [InlineData("EUR 12", "Give the number alone")]
    public void Who_writes_a_number_otherwise_is_told_how(string number, string hint) =>
        Assert.Contains(hint, ReadCsv.Of($"{Header}\na,eyepiece,\"{number}\",2in,12,52,9").MessageAt("/line/2/price"), StringComparison.Ordinal);

    [Fact]
    public void A_quotation_mark_for_inches_is_text() =>
        Assert.Equal("Kidney 1.25\" wide", ReadCsv.Of($"{Header},name\n{Good},Kidney 1.25\" wide").Catalogue!.Items![0]!.Name);

    [Theory]
    [InlineData("id;preis\na;12.50\n")]
    [InlineData("id\na\n")]
    public void A_feed_without_a_column_that_changes_anything_is_refused(string csv)
    {
        var changes = CsvItems.Read(Encoding.UTF8.GetBytes(csv), CsvPurpose.Changes, refuseUnknown: false, new Faults(), new WarningList());

        var fault = Assert.Single(changes.Faults.Shown);
        Assert.Equal(("/line/1", FaultCode.Missing), (fault.Pointer, fault.Code));
        Assert.Contains("`price`", fault.Message.In(Language.English), StringComparison.Ordinal);
    }

    [Fact]
    public void A_column_that_is_not_known_is_left_out_with_a_warning()
    {
        var read = ReadCsv.Of($"{Header},Prise,warehouse,\n{Good},1,2,3");

        Assert.Empty(read.Errors);
        Assert.Equal(["/line/1/Prise unknown-column", "/line/1/warehouse unknown-column", "/line/1/ unknown-column"], read.WarningCodes);
        Assert.Equal(
            """{"column":"Prise","nearest":"price"}""", JsonSerializer.Serialize(read.Warnings.Shown[0].Values, AnswerJson.OptionsIn(Language.English)));
    }

    [Fact]
    public void A_column_that_is_not_known_is_refused_on_request() => Assert.Equal(
        ["/line/1/Prise unknown-field", "/line/1/warehouse unknown-field", "/line/1/ unknown-field"],
        ReadCsv.Of($"{Header},Prise,warehouse,\n{Good},1,2,3", refuseUnknown: true).Errors);

    [Fact]
    public void Bytes_that_are_not_UTF_8_are_named_by_their_line()
    {
        byte[] latin = Encoding.Latin1.GetBytes($"{Header},name\n{Good},Gr\u00FCn\nb{Good},x\nc{Good},\u00E4");

        Assert.Equal(["/line/2 invalid-text", "/line/4 invalid-text"], ReadCsv.Of(latin).Errors);
        Assert.Equal(["/line/1 invalid-text"], ReadCsv.Of([.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes(AllKinds)]).Errors);
    }

    [Fact]
    public void Of_three_thousand_rows_the_twenty_faulty_ones_are_all_named()
    {
        var rows = Enumerable.Range(0, 3000).Select(i => i % 150 == 7 ? $"i{i},eyepiece,1,2in,1000,52,9" : $"i{i},eyepiece,1,2in,12,52,9");

        var read = ReadCsv.Of($"{Header}\n{string.Join('\n', rows)}");

        Assert.Equal(Enumerable.Range(0, 20).Select(i => $"/line/{2 + 7 + (150 * i)}/focalLengthMm out-of-range"), read.Errors);
    }

    [Fact]
    public void A_row_too_many_is_named() => Assert.Equal(
        ["/line/3002 too-many"],
        ReadCsv.Of($"{Header}\n{string.Join('\n', Enumerable.Range(0, 3005).Select(i => $"i{i},eyepiece,1,2in,12,52,9"))}").Errors);

    [Fact]
    public void A_change_needs_only_an_id_and_leaves_empty_cells_alone()
    {
        var changes =
            CsvItems.Read("id;price;inStock\na;12.50;\n\nb;;FALSE\n"u8.ToArray(), CsvPurpose.Changes, refuseUnknown: false, new Faults(), new WarningList());

        Assert.False(changes.Faults.Any);
        Assert.Equal(["""{"id":"a","price":12.50}""", """{"id":"b","inStock":false}"""], changes.Rows.Select(row => row.GetRawText()));
        Assert.Equal([2, 4], changes.Lines);
    }

    /// <summary>With the fields by their names, since their order says nothing.</summary>
    private static string Sorted(JsonElement row) =>
        $"{{{string.Join(',', row.EnumerateObject().OrderBy(field => field.Name, StringComparer.Ordinal)
            .Select(field => $"\"{field.Name}\":{field.Value.GetRawText()}"))}}}";
}
