namespace Evenstep.Service.Tests.Contract.Fields;

/// <summary>Numbers that are written oddly but are what they should be.</summary>
public sealed class OddNumberTests(Service service) : IClassFixture<Service>
{
    [Theory]
    [InlineData("/limits/budget", "2.5E+2")]
    [InlineData("/limits/budget", "25000e-2")]
    [InlineData("/limits/budget", "-0")]
    [InlineData("/limits/budget", "-0.00")]
    [InlineData("/limits/budget", "0e9223372036854775808")]
    [InlineData("/limits/budget", "0e-9223372036854775808")]
    [InlineData("/limits/budget", "250.00⟦0×5000⟧")]
    [InlineData("/limits/budget", "250⟦0×5000⟧e-5000")]
    [InlineData("/limits/budget", "0.⟦0×5000⟧25e5003")]
    [InlineData("/limits/maxPurchases", "3.0")]
    [InlineData("/limits/maxPurchases", "0.3e1")]
    [InlineData("/limits/maxPurchases", "-0")]
    [InlineData("/observer/astigmatismDioptres", "-0.0")]
    [InlineData("/observer/leastEyeReliefMm", "1e-400")]
    [InlineData("/observer/age", "52.00000000000000000000000000000000001")]
    [InlineData("/catalogue/items/0/price", "4550e-2")]
    [InlineData("/catalogue/items/0/price", "0.455E2")]
    public async Task An_odd_number_within_the_bounds_is_taken(string place, string number)
    {
        var body = BodyPatch.Apply(TestFile.Valid("recommendations"), new Dictionary<string, string?> { [place] = number });

        var answer = await service.PostAsync("/v1/recommendations", body);

        Assert.True(answer.Status == 200, answer.Body);
    }
}
