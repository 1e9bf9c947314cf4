using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Evenstep.Service.Tests.House;

/// <summary>Which source file of a project uses which other, as the compiler understands them.</summary>
internal sealed class SourceGraph
{
    /// <summary>What the SDK adds to every file of a web project.</summary>
    private const string ImplicitUsings = """
        global using System;
        global using System.Collections.Generic;
        global using System.IO;
        global using System.Linq;
        global using System.Net.Http;
        global using System.Net.Http.Json;
        global using System.Threading;
        global using System.Threading.Tasks;
        global using Microsoft.AspNetCore.Builder;
        global using Microsoft.AspNetCore.Hosting;
        global using Microsoft.AspNetCore.Http;
        global using Microsoft.AspNetCore.Routing;
        global using Microsoft.Extensions.Configuration;
        global using Microsoft.Extensions.DependencyInjection;
        global using Microsoft.Extensions.Hosting;
        global using Microsoft.Extensions.Logging;
        """;

    private readonly SortedDictionary<string, SortedSet<string>> uses;

    private SourceGraph(SortedDictionary<string, SortedSet<string>> uses) => this.uses = uses;

    /// <summary>Paths of all files, from the project's folder, with slashes.</summary>
    public IReadOnlyCollection<string> Files => uses.Keys;

    /// <summary>Every use of a file by another.</summary>
    public IEnumerable<(string User, string Used)> Arrows => uses.SelectMany(file => file.Value.Select(used => (file.Key, used)));

    /// <summary>Reads a project.</summary>
    /// <param name="folder">Its folder.</param>
    public static SourceGraph Read(string folder) => Of(Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
        .Select(path => (Path: Path.GetRelativePath(folder, path).Replace('\\', '/'), Text: File.ReadAllText(path)))
        .Where(file => !file.Path.StartsWith("bin/", StringComparison.Ordinal) && !file.Path.StartsWith("obj/", StringComparison.Ordinal)));

    /// <summary>Understands files that are given as paths and texts.</summary>
    public static SourceGraph Of(IEnumerable<(string Path, string Text)> files)
    {
        var trees = files.Select(file => CSharpSyntaxTree.ParseText(file.Text, path: file.Path)).ToArray();
        var assemblies = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator);
        var compilation = CSharpCompilation.Create(
            "house",
            [.. trees, CSharpSyntaxTree.ParseText(ImplicitUsings)],
            assemblies.Where(path => !IsOurs(path)).Select(path => MetadataReference.CreateFromFile(path)),
            new CSharpCompilationOptions(OutputKind.ConsoleApplication));
        return new SourceGraph(new(
            trees.ToDictionary(tree => tree.FilePath, tree => UsedBy(compilation.GetSemanticModel(tree))), StringComparer.Ordinal));
    }

    /// <summary>All files that a file makes its reader open: those it uses, and those that they use.</summary>
    public IReadOnlyCollection<string> ReachedFrom(string file)
    {
        var reached = new HashSet<string>(StringComparer.Ordinal);
        var open = new Stack<string>([file]);
        while (open.TryPop(out var next))
        {
            foreach (var used in uses[next].Where(reached.Add))
            {
                open.Push(used);
            }
        }

        reached.Remove(file);
        return reached;
    }

    /// <summary>The circles among what files are gathered to, such as the files themselves, or their folders.</summary>
    public IEnumerable<string[]> Circles(Func<string, string> gather) => Circular.Groups(Arrows
        .Select(arrow => (User: gather(arrow.User), Used: gather(arrow.Used)))
        .Where(arrow => arrow.User != arrow.Used)
        .ToLookup(arrow => arrow.User, arrow => arrow.Used, StringComparer.Ordinal));

    /// <summary>The service must be understood from its sources; the planner is a library to it.</summary>
    private static bool IsOurs(string path) => Path.GetFileName(path).StartsWith("Evenstep.Service", StringComparison.Ordinal);

    private static SortedSet<string> UsedBy(SemanticModel model) => new(
        model.SyntaxTree.GetRoot().DescendantNodes()
            .Where(node => node is SimpleNameSyntax { IsVar: false } or BaseObjectCreationExpressionSyntax)
            .SelectMany(node => DeclaredIn(model.GetSymbolInfo(node)))
            .Where(path => path.Length > 0 && path != model.SyntaxTree.FilePath),
        StringComparer.Ordinal);

    private static IEnumerable<string> DeclaredIn(SymbolInfo info) =>
        from symbol in info.Symbol is { } one ? [one] : info.CandidateSymbols
        where symbol is not INamespaceSymbol
        from declaration in ((symbol as IMethodSymbol)?.ReducedFrom ?? symbol).OriginalDefinition.DeclaringSyntaxReferences
        select declaration.SyntaxTree.FilePath;
}
