namespace Evenstep.Planning.Tests.House;

/// <summary>A source file of this repository.</summary>
/// <param name="Path">From the root, with slashes.</param>
/// <param name="Lines">As they stand.</param>
internal sealed record SourceFile(string Path, string[] Lines)
{
    /// <summary>The lines without their comments, so that what is said of a thing is not taken for its use.</summary>
    public IEnumerable<string> CodeLines => Lines.Select(WithoutComment);

    private static string WithoutComment(string line)
    {
        var comment = line.IndexOf("//", StringComparison.Ordinal);
        var isAddress = comment > 0 && line[comment - 1] == ':';
        return comment < 0 || isAddress ? line : line[..comment];
    }
}

/// <summary>The C# sources of this repository, found from where the tests run.</summary>
internal static class SourceTree
{
    private const string RootMark = "Evenstep.slnx";

    private static readonly string Root = FindRoot();

    /// <summary>Every source file under a folder of the root, what the build makes aside.</summary>
    public static SourceFile[] Under(string folder, string pattern = "*.cs")
    {
        SourceFile[] files =
        [
            .. Directory.EnumerateFiles(Path.Combine(Root, folder), pattern, SearchOption.AllDirectories)
                .Select(path => (Full: path, Relative: Path.GetRelativePath(Root, path).Replace('\\', '/')))
                .Where(file => !file.Relative.Split('/').Any(part => part is "bin" or "obj"))
                .OrderBy(file => file.Relative, StringComparer.Ordinal)
                .Select(file => new SourceFile(file.Relative, File.ReadAllLines(file.Full))),
        ];
        Assert.NotEmpty(files);
        return files;
    }

    /// <summary>Where a line is at fault: path, number from 1 and text.</summary>
    public static IEnumerable<string> Faults(IEnumerable<SourceFile> files, Func<string, bool> isAtFault) =>
        from file in files
        from line in file.Lines.Index()
        where isAtFault(line.Item)
        select $"{file.Path}:{line.Index + 1}: {line.Item}";

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, RootMark)))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException($"No folder above {AppContext.BaseDirectory} has {RootMark}.");
    }
}
