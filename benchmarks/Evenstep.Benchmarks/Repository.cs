namespace Evenstep.Benchmarks;

/// <summary>Places in this repository, found from where the benchmarks run.</summary>
internal static class Repository
{
    private const string RootMark = "Evenstep.slnx";

    public static string Root { get; } = RootAbove(new DirectoryInfo(AppContext.BaseDirectory));

    public static string Reports => Path.Combine(Root, "benchmarks", "reports");

    /// <summary>The service as built along with the benchmarks, in the same configuration.</summary>
    public static string ServiceAssembly
    {
        get
        {
            var framework = new DirectoryInfo(AppContext.BaseDirectory);
            return Path.Combine(Root, "src", "Evenstep.Service", "bin", framework.Parent!.Name, framework.Name, "Evenstep.Service.dll");
        }
    }

    public static string Example(string name) => File.ReadAllText(Path.Combine(Root, "openapi", "examples", $"{name}.json"));

    private static string RootAbove(DirectoryInfo? folder)
    {
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, RootMark)))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException($"No folder above {AppContext.BaseDirectory} has {RootMark}.");
    }
}
