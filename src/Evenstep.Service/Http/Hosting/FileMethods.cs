using Microsoft.Extensions.FileProviders;
using Microsoft.Net.Http.Headers;

namespace Evenstep.Service.Http.Hosting;

/// <summary>Says of files that they take GET and HEAD and nothing else: for any other method they would not seem to be there.</summary>
internal static class FileMethods
{
    public static void UseFileMethods(this WebApplication app, IFileProvider files, PathString under = default) => app.Use((context, next) =>
    {
        var request = context.Request;
        if (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method)
            || !request.Path.StartsWithSegments(under, out var rest) || !files.GetFileInfo(NameOf(rest)).Exists)
        {
            return next(context);
        }

        context.Response.StatusCode = StatusCodes.Status405MethodNotAllowed;
        context.Response.Headers[HeaderNames.Allow] = $"{HttpMethods.Get}, {HttpMethods.Head}";
        return Task.CompletedTask;
    });

    private static string NameOf(PathString path) => path.Value is "/" ? "/index.html" : path.Value ?? "";
}
