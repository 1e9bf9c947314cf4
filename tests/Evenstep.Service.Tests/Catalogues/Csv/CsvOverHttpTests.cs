using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Catalogues.Csv;

/// <summary>Catalogues are stored from CSV, and given as CSV.</summary>
public sealed class CsvOverHttpTests(Service service) : IClassFixture<Service>
{
    private const string Csv = "text/csv";
    private const string Header = "id,kind,price,barrel,focalLengthMm,apparentFieldDeg,eyeReliefMm";
    private const string Rows = $"{Header}\nwide,eyepiece,89.90,1.25in,25,60,18\nfine,eyepiece,75,1.25in,8,60,15\n";

    private readonly string path = $"/v1/catalogues/shop-{Guid.NewGuid():n}";

    [Fact]
    public async Task A_CSV_and_the_same_items_as_JSON_are_one_version()
    {
        var csv = await PutAsync(Rows);
        var json = await service.GetAsync(path);
        var again = await service.SendAsync(HttpMethod.Put, path, json.Body);

        Assert.Equal((201, 2, 0), (csv.Status, csv.As<StoredSummary>().ItemCount, csv.As<StoredSummary>().Warnings.Count));
        Assert.Equal((200, csv.ETag), (again.Status, again.ETag));
    }

    [Fact]
    public async Task The_demo_catalogue_goes_out_and_in_again_as_CSV()
    {
        var export = await GetAsync("/v1/catalogues/demo", Csv);

        var stored = await PutAsync(export.Body);

        Assert.Equal((200, Csv), (export.Status, export.ContentType));
        Assert.Equal(201, stored.Status);
        Assert.All(stored.As<StoredSummary>().Warnings, warning => Assert.StartsWith("assumed-", warning.Code, StringComparison.Ordinal));
        Assert.Equal(
            (await service.GetAsync("/v1/catalogues/demo")).Items.Select(item => item.GetRawText()),
            (await service.GetAsync(path)).Items.Select(item => item.GetRawText()));
    }

    [Fact]
    public async Task The_example_is_the_same_in_both_forms()
    {
        await service.SendAsync(HttpMethod.Put, path, Repository.Example("catalogue-small-shop"));
        var json = await service.GetAsync(path);

        var csv = await service.SendAsync(
            HttpMethod.Put, path, File.ReadAllText(Path.Combine(Repository.Root, "openapi", "examples", "catalogue-small-shop.csv")), Csv);

        Assert.Equal((200, json.ETag), (csv.Status, csv.ETag));
    }

    [Theory]
    [InlineData("text/csv", "text/csv")]
    [InlineData("application/json", "application/json")]
    [InlineData("*/*", "application/json")]
    [InlineData("text/*", "text/csv")]
    [InlineData("application/json;q=0.5, text/csv", "text/csv")]
    [InlineData("application/json;q=0, */*", "text/csv")]
    [InlineData("image/png", "application/problem+json")]
    public async Task The_Accept_header_chooses_the_media_type(string accept, string type) =>
        Assert.Equal(type, (await GetAsync("/v1/catalogues/demo", accept)).ContentType);

    [Fact]
    public async Task Each_form_has_its_own_tag_and_either_lets_a_change_through()
    {
        var stored = await PutAsync(Rows);
        var csv = await GetAsync(path, Csv);

        Assert.NotEqual(stored.ETag, csv.ETag);
        Assert.Contains("Accept", csv.Vary.Split(", "));
        Assert.Equal(304, (await service.SendAsync(HttpMethod.Get, path, headers: [("Accept", Csv), ("If-None-Match", csv.ETag!)])).Status);
        Assert.Equal(200, (await service.SendAsync(HttpMethod.Get, path, headers: [("Accept", Csv), ("If-None-Match", stored.ETag!)])).Status);
        Assert.Equal(200, (await PutAsync(Rows + "third,eyepiece,1,2in,30,70,20\n", ("If-Match", csv.ETag!))).Status);
        Assert.Equal(412, (await PutAsync(Rows, ("If-Match", csv.ETag!))).Status);
    }

    [Fact]
    public async Task Telescopes_and_currency_of_a_stored_catalogue_stay()
    {
        await service.SendAsync(HttpMethod.Put, path, Wares.Json());
        var export = await GetAsync(path, Csv);

        var changed = await service.SendAsync(HttpMethod.Put, path, export.Body, Csv);
        var torn = await PutAsync(Rows);

        Assert.Equal((200, 1, "EUR"), (changed.Status, changed.As<StoredSummary>().TelescopeCount, changed.As<StoredSummary>().Currency));
        Assert.Equal(400, torn.Status);
        Assert.All(torn.Errors, error => Assert.Matches("^/telescopes/0/included/[0-9] unknown-item$", error));
    }

    [Fact]
    public async Task A_CSV_of_a_new_catalogue_needs_a_currency() => Assert.Equal(
        ["currency missing"], (await service.SendAsync(HttpMethod.Put, path, Rows, Csv)).Errors);

    [Theory]
    [InlineData("?currency=euro", "currency too-long")]
    [InlineData("?currency=EUR&unknownColumns=maybe", "unknownColumns not-one-of")]
    [InlineData("?currency=EUR&unknowncolumns=refuse", "unknowncolumns unknown-field")]
    public async Task Parameters_are_looked_at(string query, string error) =>
        Assert.Equal([error], (await service.SendAsync(HttpMethod.Put, path + query, Rows, Csv)).Errors);

    [Fact]
    public async Task Parameters_of_CSV_do_not_go_with_JSON() =>
        Assert.Equal(["currency unknown-field"], (await service.SendAsync(HttpMethod.Put, path + "?currency=EUR", Wares.Json())).Errors);

    [Fact]
    public async Task Of_three_thousand_rows_with_twenty_faults_all_twenty_are_named_and_nothing_is_stored()
    {
        var rows = Enumerable.Range(0, 3000).Select(i => $"i{i},eyepiece,{(i % 150 == 7 ? "1.999" : "1")},2in,12,52,9");

        var answer = await PutAsync($"{Header}\n{string.Join('\n', rows)}\n");

        Assert.Equal(400, answer.Status);
        Assert.Equal(Enumerable.Range(0, 20).Select(i => $"/line/{2 + 7 + (150 * i)}/price too-many-decimals"), answer.Errors);
        Assert.Equal(404, (await service.GetAsync(path)).Status);
    }

    [Theory]
    [InlineData("en", "The price is 0, so it will be recommended as a gift.")]
    [InlineData("de", "Der Preis ist 0; der Artikel würde als Geschenk empfohlen.")]
    public async Task Warnings_come_with_the_answer_in_the_language_asked_for(string language, string text)
    {
        var answer =
            await PutAsync(Rows.Replace("75", "0", StringComparison.Ordinal).Replace("\n", ",x\n", StringComparison.Ordinal), ("Accept-Language", language));

        var warnings = answer.As<StoredSummary>().Warnings;
        Assert.Equal(["/line/1/x unknown-column", "/line/3/price price-of-zero"], warnings.Select(one => $"{one.Pointer} {one.Code}"));
        Assert.Equal(text, warnings[1].Text);
        Assert.Equal(201, answer.Status);
    }

    [Fact]
    public async Task Columns_that_are_not_known_are_refused_on_request()
    {
        var rows = Rows.Replace("\n", ",x\n", StringComparison.Ordinal);

        var answer = await service.SendAsync(HttpMethod.Put, $"{path}?currency=EUR&unknownColumns=refuse", rows, Csv);

        Assert.Equal(["/line/1/x unknown-field"], answer.Errors);
    }

    [Fact]
    public async Task JSON_is_warned_of_by_pointer()
    {
        var answer = await service.SendAsync(
            HttpMethod.Put, path, """{ "currency": "EUK", "items": [ { "id": "a", "kind": "barlow", "factors": [2], "barrel": "2in", "price": 0 } ] }""");

        Assert.Equal(["/currency", "/items/0/price"], answer.As<StoredSummary>().Warnings.Select(one => one.Pointer));
    }

    [Fact]
    public async Task Prices_change_by_a_CSV_and_empty_cells_leave_the_rest()
    {
        await PutAsync(Rows);

        var answer = await PatchAsync("\uFEFFid;price;inStock\r\nfine;69.90;\r\n\r\nwide;;FALSE\r\n");

        Assert.Equal(200, answer.Status);
        Assert.Equal(answer.ETag, (await PutAsync($"{Header},inStock\nwide,eyepiece,89.90,1.25in,25,60,18,false\nfine,eyepiece,69.90,1.25in,8,60,15,\n")).ETag);
    }

    [Fact]
    public async Task A_feed_with_faults_names_them_all_and_changes_nothing()
    {
        var before = await PutAsync(Rows);

        var answer = await PatchAsync("id,price,barrel\nfine,69.999,\nfien,1,\nwide,1,3in\nwide,1,\n,5,\nfine\n");

        Assert.Equal(400, answer.Status);
        Assert.Equal(
            [
                "/line/2/price too-many-decimals", "/line/3/id unknown-item", "/line/4/barrel not-one-of", "/line/5/id duplicate", "/line/6/id missing",
                "/line/7 too-few"
            ],
            answer.Errors.Order(StringComparer.Ordinal));
        Assert.Equal(before.ETag, (await service.GetAsync(path)).ETag);
    }

    [Fact]
    public async Task A_feed_needs_the_ids_and_says_so_once()
    {
        await PutAsync(Rows);

        Assert.Equal(["/line/1/id missing"], (await PatchAsync("price\n1\n2\n")).Errors);
        Assert.Equal(["currency unknown-field"], (await PatchAsync("id,price\nfine,1\n", "?currency=EUR")).Errors);
        Assert.Equal(["/line/1/prize unknown-field"], (await PatchAsync("id,prize\nfine,1\n", "?unknownColumns=refuse")).Errors);
    }

    [Fact]
    public async Task A_feed_is_warned_of_what_it_changes()
    {
        await PutAsync(Rows);

        var answer = await PatchAsync("id,price,warehouse\nfine,0,north\n");

        Assert.Equal(
            ["/line/1/warehouse unknown-column", "/line/2/price price-of-zero"],
            answer.As<StoredSummary>().Warnings.Select(one => $"{one.Pointer} {one.Code}"));
    }

    [Fact]
    public async Task An_export_sent_back_as_a_feed_changes_nothing()
    {
        var before = await service.SendAsync(HttpMethod.Put, path, Repository.Example("catalogue-small-shop"));

        Assert.Equal(before.ETag, (await PatchAsync((await GetAsync(path, Csv)).Body)).ETag);
    }

    private Task<Answer> PutAsync(string csv, params (string, string)[] headers) =>
        service.SendAsync(HttpMethod.Put, $"{path}?currency=EUR", csv, Csv, headers);

    private Task<Answer> PatchAsync(string csv, string query = "") => service.SendAsync(HttpMethod.Patch, $"{path}/items{query}", csv, Csv);

    private Task<Answer> GetAsync(string from, string accept) => service.SendAsync(HttpMethod.Get, from, headers: ("Accept", accept));
}
