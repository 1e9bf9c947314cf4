namespace Evenstep.Service.Tests.Answering.Pictures;

/// <summary>The picture that the README shows is the one that the service draws.</summary>
public sealed class PictureDocumentTests(Service service) : IClassFixture<Service>
{
    private const string Example = "recommendation-spectacles";
    private const string Rewrite = "EVENSTEP_WRITE_OPENAPI";

    [Fact]
    public async Task The_committed_picture_is_the_one_drawn()
    {
        var path = Path.Combine(Repository.Root, "openapi", "examples", $"{Example}.svg");
        var drawn = await service.PostAsync("/v1/recommendations", Repository.Example(Example), accept: "image/svg+xml");

        if (Environment.GetEnvironmentVariable(Rewrite) == "1")
        {
            await File.WriteAllTextAsync(path, drawn.Body);
        }

        Assert.True(await File.ReadAllTextAsync(path) == drawn.Body, $"The picture has changed. To commit it as it is now, run the tests with {Rewrite}=1.");
    }
}
