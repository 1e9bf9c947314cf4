namespace Evenstep.Service.Tests.Http.Errors;

/// <summary>What is said of a faulty address or query helps whoever wrote it there, not whoever writes bodies.</summary>
public sealed class AdviceTests(Service service) : IClassFixture<Service>
{
    private const string Page = "/v1/catalogues/demo/telescopes/capstan-152/recommendation";
    private const string ItemPage = "/v1/catalogues/demo/items/kelpstone-5-5/match";

    [Theory]
    [InlineData(Page, "observes=planets,%20moon", "To give several, repeat the parameter: observes=planets&observes=moon")]
    [InlineData(Page, "budget=%20100", "Write it as 100.")]
    [InlineData(Page, "budget=+0100.50", "Write it as 100.50.")]
    [InlineData(Page, "budget=%2B100", "Write it as 100.")]
    [InlineData(Page, "budget=1,5", "Write a decimal point: 1.5.")]
    [InlineData(Page, "budget=1.000,50", "Give the number alone, with a decimal point, and nothing between its thousands.")]
    [InlineData(ItemPage, "telescope=none", "or give `apertureMm`, `focalLengthMm` and `focuserBarrel` instead of `telescope`.")]
    public async Task Of_a_query(string page, string query, string advice)
    {
        var answer = await service.GetAsync($"{page}?{query}");

        Assert.InRange(answer.Status, 400, 404);
        Assert.EndsWith(advice, answer.Problem.Detail, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/v1/recommendation", "Did you mean `/v1/recommendations`?")]
    [InlineData("/recommendations", "Did you mean `/v1/recommendations`?")]
    [InlineData("/v1/catalogs/demo", "Did you mean `/v1/catalogues/demo`?")]
    [InlineData("/v1/catalogues/demo/items/x/matches", "Did you mean `/v1/catalogues/demo/items/x/match`?")]
    [InlineData("/health/alive", "Did you mean `/health/live`?")]
    [InlineData("/nope", "There are `/v1/assessments`, `/v1/buying-paths`, `/v1/catalogues`,")]
    public async Task Of_an_address_where_nothing_is(string address, string advice)
    {
        var answer = await service.GetAsync(address);

        var detail = answer.Problem.Detail;
        Assert.Equal(404, answer.Status);
        Assert.StartsWith($"There is nothing at {address}. {advice}", detail, StringComparison.Ordinal);
        Assert.EndsWith(" The document of all there is: `/openapi/v1.json`; for reading: `/swagger`.", detail, StringComparison.Ordinal);
    }
}
