namespace Evenstep.Service.Tests.Http.Headers;

/// <summary>A question may be about one version only (RFC 9110, section 13.1.1).</summary>
public sealed class ReadPreconditionTests(Service service) : IClassFixture<Service>
{
    [Theory]
    [InlineData("/v1/catalogues/demo")]
    [InlineData("/v1/catalogues/demo/items/kelpstone-5-5/match?telescope=capstan-152")]
    public async Task Whatever_has_another_tag_is_not_given(string address)
    {
        var tag = (await service.GetAsync(address)).ETag!;

        Assert.Equal(200, (await AskAsync(address, ("If-Match", tag))).Status);
        Assert.Equal(200, (await AskAsync(address, ("If-Match", "*"))).Status);
        Assert.Equal(304, (await AskAsync(address, ("If-Match", tag), ("If-None-Match", tag))).Status);
        Assert.Equal(412, (await AskAsync(address, ("If-Match", "\"other\""), ("If-None-Match", tag))).Status);

        // Weakly alike is not enough for If-Match.
        Assert.Equal(412, (await AskAsync(address, ("If-Match", $"W/{tag}"))).Status);
        Assert.Contains(
            $"the entity tag {tag.Replace("\"", "\\\"", StringComparison.Ordinal)}", (await AskAsync(address, ("If-Match", "\"other\""))).Body,
            StringComparison.Ordinal);
    }

    private Task<Answer> AskAsync(string address, params (string, string)[] headers) => service.SendAsync(HttpMethod.Get, address, headers: headers);
}
