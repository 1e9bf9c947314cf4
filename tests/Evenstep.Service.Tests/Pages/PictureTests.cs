namespace Evenstep.Service.Tests.Pages;

/// <summary>The pictures of the page that the README shows; written anew where <see cref="Rewrite"/> is 1.</summary>
public sealed class PictureTests
{
    private const string Rewrite = "EVENSTEP_WRITE_SCREENSHOTS";
    private const long MostBytes = 3_000_000;

    private static readonly string[] Names = ["360-dark", "360-light", "800-dark", "800-light", "1440-dark", "1440-light"];

    private static string Folder => Path.Combine(Repository.Root, "tests", "Evenstep.Service.Tests", "Pages", "screenshots");

    [BrowserFact]
    public async Task They_are_there_and_not_large()
    {
        if (Environment.GetEnvironmentVariable(Rewrite) == "1")
        {
            await TakeAsync();
        }

        var pictures = Names.Select(name => new FileInfo(Path.Combine(Folder, $"{name}.png"))).ToList();
        Assert.All(pictures, picture => Assert.True(picture.Exists, $"{picture.Name} is missing; run the tests with {Rewrite}=1."));
        Assert.InRange(pictures.Sum(picture => picture.Length), 1, MostBytes);
    }

    private static async Task TakeAsync()
    {
        using var run = new PageRun();
        using var taking = Browser.Look("pictures.mjs", run.Start(), Folder);
        await taking.WaitForExitAsync();
        Assert.Equal(0, taking.ExitCode);
    }
}
