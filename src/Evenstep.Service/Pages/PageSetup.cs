using System.Text;
using System.Text.Json;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Http.Hosting;
using Microsoft.Extensions.FileProviders;

namespace Evenstep.Service.Pages;

/// <summary>
/// The page at `/`, for an adviser or whoever advises themselves: plain files beside the assembly, which ask the service
/// like any other caller. What it says is made of the language files.
/// </summary>
internal static class PageSetup
{
    /// <summary>Everything comes from here, nothing is written into the page as code, and nobody puts the page into theirs.</summary>
    private const string ContentSecurityPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; "
        + "form-action 'none'; base-uri 'none'; frame-ancestors 'none'";

    /// <summary>The browser keeps the files, but asks whether they are still the same: page and service go together.</summary>
    private const string AskEachTime = "no-cache";

    public static void UsePage(this WebApplication app)
    {
        var files = new CompositeFileProvider(new PhysicalFileProvider(Path.Combine(AppContext.BaseDirectory, "Pages")), new MadeFiles(Words()));
        app.UseFileMethods(files);
        app.UseDefaultFiles(new DefaultFilesOptions { FileProvider = files });
        app.UseStaticFiles(new StaticFileOptions { FileProvider = files, OnPrepareResponse = file => Prepare(file.Context.Response.Headers) });
    }

    /// <summary>A module a language, and one that lists them.</summary>
    private static Dictionary<string, byte[]> Words()
    {
        var words = Language.All.ToDictionary(
            language => $"/page/{language.Tag}.js",
            language => Encoding.UTF8.GetBytes($"export const texts = {language.File.Serialize("page")};\n"));
        words["/page/languages.js"] = Encoding.UTF8.GetBytes(
            $"export const languages = [{string.Join(", ", Language.All.Select(language => $"[{Quoted(language.Tag)}, {Quoted(language.Name)}]"))}];\n");
        return words;
    }

    private static string Quoted(string text) => $"\"{JsonEncodedText.Encode(text)}\"";

    private static void Prepare(IHeaderDictionary headers)
    {
        headers.CacheControl = AskEachTime;
        headers.ContentSecurityPolicy = ContentSecurityPolicy;
        headers.ContentLanguage = string.Join(", ", Language.All.Select(language => language.Tag));
        headers["Referrer-Policy"] = "no-referrer";
    }
}
