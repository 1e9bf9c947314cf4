using System.Text;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Http.Hosting;
using Microsoft.AspNetCore.StaticFiles;
using Microsoft.Extensions.FileProviders;

namespace Evenstep.Service.Elements;

/// <summary>
/// Custom elements for the pages of others, a shop's or a club's, each put in with one script: plain modules beside the
/// assembly, which ask the service like any other caller. With them a page to see them on.
/// </summary>
internal static class ElementSetup
{
    private const string Route = "/elements";

    /// <summary>
    /// The sample page allows as little as the strictest host: no script and no style but from files, nothing from
    /// elsewhere, and no text taken for markup.
    /// </summary>
    private const string StrictPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; form-action 'none'; base-uri 'none'; "
        + "frame-ancestors 'none'; require-trusted-types-for 'script'; trusted-types 'none'";

    /// <summary>Any browser may keep the files, but asks whether they are still the same: elements and service go together.</summary>
    private const string AskEachTime = "public, no-cache";

    public static void UseElements(this WebApplication app)
    {
        var files = new CompositeFileProvider(
            new PhysicalFileProvider(Path.Combine(AppContext.BaseDirectory, "Elements", "files")),
            new MadeFiles(new Dictionary<string, byte[]> { ["/words.js"] = Words() }));
        app.UseFileMethods(files, Route);
        app.UseStaticFiles(new StaticFileOptions { RequestPath = Route, FileProvider = files, OnPrepareResponse = Prepare });
    }

    /// <summary>One module with all languages: the words are few.</summary>
    private static byte[] Words() => Encoding.UTF8.GetBytes(
        $"export const words = {{ {string.Join(", ", Language.All.Select(language => $"\"{language.Tag}\": {language.File.Serialize("elements")}"))} }};\n");

    private static void Prepare(StaticFileResponseContext file)
    {
        var headers = file.Context.Response.Headers;
        headers.CacheControl = AskEachTime;
        if (file.File.Name.EndsWith(".html", StringComparison.Ordinal))
        {
            headers.ContentSecurityPolicy = StrictPolicy;
            return;
        }

        // A page of another origin may only run a module that says so.
        headers.AccessControlAllowOrigin = "*";
        headers["Cross-Origin-Resource-Policy"] = "cross-origin";
    }
}
