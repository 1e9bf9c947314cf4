using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace Evenstep.Benchmarks.Http;

/// <summary>
/// The least that an answer can cost: the same web stack with the same settings reads the body and sends a canned answer.
/// It runs in a process of its own, as the service does.
/// </summary>
internal static class Floor
{
    /// <summary>The first argument that makes this program the floor.</summary>
    public const string Command = "floor";

    private const int MostBytes = 2 * 1024 * 1024;

    public static async Task RunAsync(string url, string answerPath)
    {
        var answer = await File.ReadAllBytesAsync(answerPath);
        var builder = WebApplication.CreateBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls(url);
        builder.WebHost.ConfigureKestrel(server =>
        {
            server.Limits.MaxRequestBodySize = MostBytes;
            server.AddServerHeader = false;
        });
        await using var app = builder.Build();
        app.MapGet(HttpRuns.ReadyPath, () => "ready");
        app.MapPost(HttpRuns.Path, context => AnswerAsync(context, answer));
        await app.RunAsync();
    }

    private static async Task AnswerAsync(HttpContext context, byte[] answer)
    {
        await context.Request.Body.CopyToAsync(Stream.Null, context.RequestAborted);
        context.Response.ContentType = "application/json; charset=utf-8";
        context.Response.ContentLength = answer.Length;
        await context.Response.Body.WriteAsync(answer, context.RequestAborted);
    }
}
