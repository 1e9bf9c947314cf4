using System.Globalization;
using System.Text.Json;
using Evenstep.Service.Answering.Pictures;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Http.Headers;
using Evenstep.Service.Tests.Answering.Pictures;
using Evenstep.Service.Tests.Catalogues.Storing;
using Evenstep.Service.Tests.Http.Authentication;
using Evenstep.Service.Tests.Judges;
using Evenstep.Service.Tests.Pages;

namespace Evenstep.Service.Tests.Elements;

/// <summary>The service on a port of its own, with a browser that goes through all checks of the elements and of random pictures once.</summary>
public sealed class ElementRun : IDisposable
{
    private const int Drawings = 60;
    private const int FirstSeed = 530_000;

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    private readonly Service service = new(data: null, (PageOrigins.Key, "*"));
    private readonly int port = FreePort.Find();
    private readonly Keyed key;
    private readonly Service keyed;
    private readonly Lazy<Task<IReadOnlyList<Finding>>> findings;

    public ElementRun()
    {
        key = new Keyed("page", "shop") { Scopes = "read", Origins = FormattableString.Invariant($"http://127.0.0.1:{port}") };
        keyed = Keyed.ServiceWith(key);
        findings = new(LookAsync);
    }

    internal Task<IReadOnlyList<Finding>> Findings => findings.Value;

    public void Dispose()
    {
        service.Dispose();
        keyed.Dispose();
    }

    private async Task<IReadOnlyList<Finding>> LookAsync()
    {
        using var look = Node.Start(
            Path.Combine("elements", "run.mjs"), Start(service), Browser.Executable!, Start(keyed), port.ToString(CultureInfo.InvariantCulture), key.Text);
        await look.StandardInput.WriteAsync(JsonSerializer.Serialize(Drawn()));
        look.StandardInput.Close();
        var lines = await look.StandardOutput.ReadToEndAsync();
        await look.WaitForExitAsync();
        return [.. lines.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonSerializer.Deserialize<Finding>(line, Options)!)];
    }

    private static string Start(Service service) => service.Listen().ToString();

    private static IEnumerable<string> Drawn() => Enumerable.Range(FirstSeed, Drawings)
        .Select(seed => System.Text.Encoding.UTF8.GetString(LadderPicture.Draw(Scenes.Random(seed), Language.All[seed % Language.All.Length])));
}
