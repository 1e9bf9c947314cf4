namespace Evenstep.Service.Tests.Contract.Fields;

/// <summary>An item whose kind is not known has all else said of it that can be.</summary>
public sealed class UnknownKindTests(Service service) : IClassFixture<Service>
{
    [Theory]
    [InlineData("""{ "id": "a", "kind": "eyepeice", "price": 1, "barrel": "2in" }""", "/items/1/kind not-one-of")]
    [InlineData("""{ "id": "a", "price": 1, "barrel": "2in" }""", "/items/1/kind missing")]
    [InlineData("""{ "id": "a", "kind": 7, "price": 1, "barrel": "2in" }""", "/items/1/kind wrong-type")]
    [InlineData("""{ "kind": "lens" }""", "/items/1/kind not-one-of|/items/1/id missing|/items/1/price missing|/items/1/barrel missing")]
    [InlineData(
        """{ "id": "b", "kind": "lens", "price": 1.999, "barrel": "3in", "focalLengthMm": "12", "factors": [ 2 ], "name": "", "colour": "red" }""",
        "/items/1/kind not-one-of|/items/1/colour unknown-field|/items/1/price too-many-decimals|/items/1/focalLengthMm wrong-type" +
        "|/items/1/barrel not-one-of|/items/1/name too-short|/items/1/id duplicate")]
    [InlineData("""{ "id": "b", "kind": null, "price": 1, "barrel": "2in" }""", "/items/1/kind missing|/items/1/id duplicate")]
    public async Task In_a_catalogue(string item, string errors)
    {
        var answer = await service.SendAsync(HttpMethod.Put, "/v1/catalogues/kinds", $$"""
            { "currency": "EUR", "items": [ { "id": "b", "kind": "barlow", "factors": [ 2 ], "barrel": "2in", "price": 1 }, {{item}} ] }
            """);

        Assert.Equal(400, answer.Status);
        Assert.Equal(errors.Split('|').Order(StringComparer.Ordinal), answer.Errors.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task In_what_is_packed_with_a_telescope()
    {
        var answer = await service.SendAsync(HttpMethod.Put, "/v1/catalogues/kinds", """
            { "currency": "EUR", "items": [], "telescopes": [ { "id": "t", "apertureMm": 100, "focalLengthMm": 1000, "focuserBarrel": "2in",
              "included": [ { "id": "x", "kind": "lens", "barrel": 2 }, "x" ] } ] }
            """);

        Assert.Equal(
            ["/telescopes/0/included/0/barrel wrong-type", "/telescopes/0/included/0/kind not-one-of", "/telescopes/0/included/1 unknown-item"],
            answer.Errors.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task In_what_is_owned()
    {
        var answer = await service.PostAsync("/v1/assessments", """
            { "telescopes": [ { "apertureMm": 203, "focalLengthMm": 1218, "focuserBarrel": "2in" } ],
              "owned": [ { "id": "a", "kind": "lens", "barrel": "2in" }, { "id": "a", "kind": "barlow", "factors": [ 2 ], "barrel": "2in" } ] }
            """);

        Assert.Equal(["/owned/0/kind not-one-of", "/owned/1/id duplicate"], answer.Errors.Order(StringComparer.Ordinal));
    }
}
