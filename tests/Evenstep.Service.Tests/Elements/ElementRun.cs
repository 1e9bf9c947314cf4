using System.Text.Json;
using Evenstep.Service.Pictures;
using Evenstep.Service.ProductPages;
using Evenstep.Service.Tests.Judges;
using Evenstep.Service.Tests.Pages;
using Evenstep.Service.Tests.Pictures;
using Evenstep.Service.Wording;

namespace Evenstep.Service.Tests.Elements;

/// <summary>The service on a port of its own, with a browser that goes through all checks of the elements and of random pictures once.</summary>
public sealed class ElementRun : IDisposable
{
    private const int Drawings = 60;
    private const int FirstSeed = 530_000;

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    private readonly Service service = new(data: null, (PageOrigins.Key, "*"));
    private readonly Lazy<Task<IReadOnlyList<Finding>>> findings;

    public ElementRun() => findings = new(LookAsync);

    internal Task<IReadOnlyList<Finding>> Findings => findings.Value;

    public void Dispose() => service.Dispose();

    private async Task<IReadOnlyList<Finding>> LookAsync()
    {
        service.UseKestrel(0);
        service.StartServer();
        using var look = Node.Start(Path.Combine("elements", "run.mjs"), service.ClientOptions.BaseAddress.ToString(), Browser.Executable!);
        await look.StandardInput.WriteAsync(JsonSerializer.Serialize(Drawn()));
        look.StandardInput.Close();
        var lines = await look.StandardOutput.ReadToEndAsync();
        await look.WaitForExitAsync();
        return [.. lines.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonSerializer.Deserialize<Finding>(line, Options)!)];
    }

    private static IEnumerable<string> Drawn() => Enumerable.Range(FirstSeed, Drawings)
        .Select(seed => System.Text.Encoding.UTF8.GetString(LadderPicture.Draw(Scenes.Random(seed), Language.All[seed % Language.All.Length])));
}
