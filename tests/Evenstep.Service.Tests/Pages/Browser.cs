using System.Diagnostics;
using Evenstep.Service.Tests.Judges;

namespace Evenstep.Service.Tests.Pages;

/// <summary>A browser, and the packages to drive it with, that <c>tests/judges/prepare.sh</c> installs.</summary>
internal static class Browser
{
    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome"];
    private static readonly string[] Packages = ["playwright-core", "axe-core"];

    public static string? Executable { get; } = (Environment.GetEnvironmentVariable("PATH") ?? "")
        .Split(Path.PathSeparator)
        .SelectMany(folder => Names.Select(name => Path.Combine(folder, name)))
        .FirstOrDefault(File.Exists);

    /// <summary>Why the page cannot be looked at; null if it can.</summary>
    public static string? Missing { get; } =
        Node.Missing
        ?? (Executable is null ? "chromium is not installed; run tests/judges/prepare.sh." : null)
        ?? (Array.Exists(Packages, IsMissing) ? "tests/judges/node_modules lacks what drives the browser; run tests/judges/prepare.sh." : null);

    /// <summary>Starts a program of <c>tests/judges/page</c> on the page at an address.</summary>
    public static Process Look(string program, Uri address, params string[] more) =>
        Node.Start([Path.Combine("page", program), address.ToString(), Executable!, .. more]);

    private static bool IsMissing(string package) => !Directory.Exists(Path.Combine(Node.Folder, "node_modules", package));
}

/// <summary>A fact that needs a browser: skipped without it on a developer's machine, failing without it where CI is set.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute()
    {
        if (string.IsNullOrEmpty(Environment.GetEnvironmentVariable("CI")))
        {
            Skip = Browser.Missing;
        }
    }
}
