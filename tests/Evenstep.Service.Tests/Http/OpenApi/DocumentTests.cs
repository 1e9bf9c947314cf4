namespace Evenstep.Service.Tests.Http.OpenApi;

public sealed class DocumentTests(Service service) : IClassFixture<Service>
{
    private const string Rewrite = "EVENSTEP_WRITE_OPENAPI";

    [Fact]
    public async Task The_committed_document_is_the_one_served()
    {
        var served = await service.GetAsync("/openapi/v1.json");

        if (Environment.GetEnvironmentVariable(Rewrite) == "1")
        {
            await File.WriteAllTextAsync(Repository.DocumentPath, served.Body);
        }

        Assert.Equal(200, served.Status);
        Assert.True(
            await File.ReadAllTextAsync(Repository.DocumentPath) == served.Body,
            $"The document has changed. To commit it as it is now, run the tests with {Rewrite}=1.");
    }

    [Fact]
    public async Task There_is_a_page_to_try_the_service_on() =>
        Assert.Equal(200, (await service.GetAsync("/swagger/index.html")).Status);
}
