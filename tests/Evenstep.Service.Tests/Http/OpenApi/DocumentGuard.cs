using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;

namespace Evenstep.Service.Tests.Http.OpenApi;

/// <summary>
/// Holds every answer that any test gets against the committed document: its status and its headers must be declared for
/// the operation. An answer that is not as declared breaks off, and the test fails with what is said here.
/// </summary>
internal sealed class DocumentGuard : IStartupFilter
{
    private const string Advice =
        "which the document does not declare. Say so in the code (MayRefuse, SendsHeaders), and write the document anew as DocumentTests says.";

    /// <summary>What every server says of the sending, and what CORS has of its own.</summary>
    private static readonly string[] OfTransport =
    [
        "Content-Type", "Content-Length", "Transfer-Encoding", "Date", "Server", "Connection",
        "Access-Control-Allow-Origin", "Access-Control-Expose-Headers",
    ];

    /// <summary>What an operation of its own does not decide: a method that is not taken, what comes too slowly or is too long before any is asked, and a
    /// caller who has left.</summary>
    private static readonly int[] OfNoOperation =
    [
        StatusCodes.Status405MethodNotAllowed, StatusCodes.Status408RequestTimeout, StatusCodes.Status414UriTooLong,
        StatusCodes.Status431RequestHeaderFieldsTooLarge, StatusCodes.Status499ClientClosedRequest,
    ];

    private static readonly (Regex Path, JsonElement Operations)[] Paths =
    [
        .. Operation.Document.GetProperty("paths").EnumerateObject().Select(path => (new Regex(PatternOf(path.Name)), path.Value)),
    ];

    public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
    {
        app.Use(async (context, handle) =>
        {
            await handle(context);
            if (!context.RequestAborted.IsCancellationRequested)
            {
                await context.Response.StartAsync();
                Check(context);
            }
        });
        next(app);
    };

    /// <summary>The same for an answer of a service in another process.</summary>
    public static void Check(HttpResponseMessage response) => Check(
        response.RequestMessage!.Method.Method, response.RequestMessage.RequestUri!.AbsolutePath, (int)response.StatusCode,
        response.Headers.Concat(response.Content.Headers).Select(header => header.Key));

    private static void Check(HttpContext context) =>
        Check(context.Request.Method, context.Request.Path.Value!, context.Response.StatusCode, context.Response.Headers.Keys);

    private static void Check(string method, string path, int code, IEnumerable<string> headers)
    {
        if (OperationOf(method, path) is not { } operation || OfNoOperation.Contains(code))
        {
            return;
        }

        var status = code.ToString(CultureInfo.InvariantCulture);
        if (!operation.GetProperty("responses").TryGetProperty(status, out var declared))
        {
            throw new InvalidOperationException($"{method} {path} was answered with {status}, {Advice}");
        }

        var undeclared = headers.Where(
            name => !OfTransport.Contains(name, StringComparer.OrdinalIgnoreCase) && !declared.GetProperty("headers").TryGetProperty(name, out _)).ToList();
        if (undeclared.Count > 0)
        {
            throw new InvalidOperationException($"{method} {path} was answered with {status} and {string.Join(", ", undeclared)}, {Advice}");
        }
    }

    private static JsonElement? OperationOf(string method, string address)
    {
        var meant = HttpMethods.IsHead(method) ? HttpMethods.Get : method;
        var operations = Paths.FirstOrDefault(path => path.Path.IsMatch(address)).Operations;
        return operations.ValueKind == JsonValueKind.Object && operations.TryGetProperty(meant.ToLowerInvariant(), out var operation) ? operation : null;
    }

    private static string PatternOf(string template) => $"^{Regex.Replace(template, @"\{[a-zA-Z]+\}", "[^/]+")}/?$";
}
