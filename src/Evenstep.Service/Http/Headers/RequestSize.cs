using System.Globalization;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Problems;
using Microsoft.AspNetCore.Http.Features;

namespace Evenstep.Service.Http.Headers;

/// <summary>Refuses a request whose address or headers are longer than anybody needs, in words; the server itself would only close the connection.</summary>
internal static class RequestSize
{
    /// <summary>Room for a product page's query of every id that a visitor may own.</summary>
    public const int MostTargetCharacters = 16 * 1024;

    public const int MostHeaderCharacters = 32 * 1024;

    public static void UseRequestSize(this WebApplication app) => app.Use((context, next) =>
        RefusalOf(context) is { } refusal ? refusal.ExecuteAsync(context) : next(context));

    private static ProblemResult? RefusalOf(HttpContext context)
    {
        var target = context.Features.Get<IHttpRequestFeature>()?.RawTarget.Length ?? 0;
        if (target > MostTargetCharacters)
        {
            return new ProblemResult(ProblemKind.AddressTooLong, string.Create(
                CultureInfo.InvariantCulture,
                $"The address has {target} characters; it may have {MostTargetCharacters}. Send what it says in the body of a POST."));
        }

        var headers = context.Request.Headers.Sum(header => header.Key.Length + header.Value.Sum(value => value?.Length ?? 0));
        return headers <= MostHeaderCharacters ? null : new ProblemResult(ProblemKind.HeadersTooLarge, string.Create(
            CultureInfo.InvariantCulture,
            $"The headers have {headers} characters; they may have {MostHeaderCharacters}. No header of this service needs many: leave out cookies, " +
            $"and whatever else is not for it."));
    }
}
