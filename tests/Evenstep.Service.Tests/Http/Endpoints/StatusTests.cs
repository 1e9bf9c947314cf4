using System.Globalization;
using System.Text;
using Evenstep.Service.Tests.Contract.Fields;
using Evenstep.Service.Tests.Http.Authentication;
using Evenstep.Service.Tests.Http.OpenApi;

namespace Evenstep.Service.Tests.Http.Endpoints;

/// <summary>
/// What the document declares is really answered: each status of each operation is brought about here, but for those that
/// take a failure (which tests of their own bring about). That nothing else is answered, <see cref="DocumentGuard"/> sees to.
/// </summary>
public sealed class StatusTests(StatusTests.KeyedService keyed) : IClassFixture<StatusTests.KeyedService>
{
    private const string Lines = "application/x-ndjson";
    private const string Patch = "application/merge-patch+json";

    private static readonly Keyed Writer = new("writer", "shop");
    private static readonly Keyed Hasty = new("hasty", "shop") { Rate = 1 };
    private static readonly Keyed OfPage = new("page", "shop") { Origins = "https://shop.example" };

    /// <summary>A mistake of ours, no answer within the work limit or no storage, and no room.</summary>
    private static readonly int[] OfFailures = [500, 503, 507];

    public static TheoryData<string> Operations => [.. Operation.OfInterface.Select(operation => operation.ToString())];

    [Theory]
    [MemberData(nameof(Operations))]
    public async Task Each_status_that_is_declared_is_answered(string name)
    {
        var operation = Operation.All.Single(one => one.ToString() == name);
        var declared = Operation.Document.GetProperty("paths").GetProperty(operation.Path).GetProperty(operation.Method.ToLowerInvariant())
            .GetProperty("responses").EnumerateObject().Select(response => int.Parse(response.Name, CultureInfo.InvariantCulture));

        foreach (var status in declared.Except(OfFailures))
        {
            // What is changed is there beforehand, unless it is to be new.
            await SendAsync(Of(status == 201 ? "DELETE /v1/catalogues/{id}" : "PUT /v1/catalogues/{id}"));
            var answer = await SendAsync(await BroughtAboutAsync(status, Of(name), operation));

            Assert.True(status == answer.Status, $"{status} was to be answered, and it was {answer.Status} {answer.Body}");
        }
    }

    /// <summary>A request that is answered with 200 or 204, until it is changed.</summary>
    private static Asked Of(string name)
    {
        var operation = Operation.All.Single(one => one.ToString() == name);
        return new Asked(new HttpMethod(operation.Method), operation.Address, Writer.Header, BodyOf(operation), TypeOf(operation));
    }

    private async Task<Asked> BroughtAboutAsync(int status, Asked asked, Operation operation) => status switch
    {
        304 => asked with { Header = ("If-None-Match", "*") },
        400 => asked with { Address = operation.AddressWith("nonsense=1") },
        401 => asked with { Key = ("X-None", "") },
        403 => asked with { Key = OfPage.Header },
        404 => Missing(asked, operation),
        406 => asked with { Header = ("Accept", "audio/midi") },
        409 => asked with { Address = asked.Address.Replace(Operation.Stored, "demo", StringComparison.Ordinal) },
        412 => asked with { Header = ("If-Match", "\"other\"") },
        413 => asked with { Body = new string(' ', 33 * 1024 * 1024) },
        415 => asked with { Type = "text/plain" },
        429 => await UsedUpAsync(asked with { Key = Hasty.Header }),
        _ => asked,
    };

    private async Task<Asked> UsedUpAsync(Asked asked)
    {
        await SendAsync(asked with { Body = null });
        return asked;
    }

    private static Asked Missing(Asked asked, Operation operation) => operation.Path.Contains('{', StringComparison.Ordinal)
        ? asked with { Address = asked.Address.Replace("/demo", "/none", StringComparison.Ordinal).Replace(Operation.Stored, "none", StringComparison.Ordinal) }
        : asked with { Body = BodyPatch.Apply(asked.Body!, new Dictionary<string, string?> { ["/catalogue/id"] = "\"none\"" }) };

    private static string? BodyOf(Operation operation) => operation.ToString() switch
    {
        "POST /v1/assessments" => Repository.Example("assessment-listed-telescope"),
        "POST /v1/second-opinions" => Repository.Example("second-opinion-spectacles"),
        "POST /v1/recommendations/batch" => Repository.Example("batch-line").ReplaceLineEndings(""),
        "PUT /v1/catalogues/{id}" => Repository.Example("catalogue-small-shop"),
        "PATCH /v1/catalogues/{id}/items" => """{ "id": "gullwing-15", "price": 69 }""",
        "PATCH /v1/catalogues/{id}/items/{itemId}" => """{ "price": 69 }""",
        { } name when name.StartsWith("POST", StringComparison.Ordinal) => Repository.Example("recommendation-spectacles"),
        _ => null,
    };

    private static string TypeOf(Operation operation) => operation.ToString() switch
    {
        "POST /v1/recommendations/batch" or "PATCH /v1/catalogues/{id}/items" => Lines,
        "PATCH /v1/catalogues/{id}/items/{itemId}" => Patch,
        _ => "application/json",
    };

    private async Task<Answer> SendAsync(Asked asked)
    {
        using var request = new HttpRequestMessage(asked.Method, new Uri(asked.Address, UriKind.Relative));
        request.Content = asked.Body is null ? null : new StringContent(asked.Body, Encoding.UTF8, asked.Type);
        request.Headers.TryAddWithoutValidation(asked.Key.Name, asked.Key.Value);
        request.Headers.TryAddWithoutValidation(asked.Header.Name ?? "X-None", asked.Header.Value);
        using var client = keyed.Service.CreateClient();
        using var response = await client.SendAsync(request);
        return await Answer.OfAsync(response);
    }

    /// <summary>A service that wants keys.</summary>
    public sealed class KeyedService : IDisposable
    {
        public Service Service { get; } = Keyed.ServiceWith(Writer, Hasty, OfPage);

        public void Dispose() => Service.Dispose();
    }

    private sealed record Asked(HttpMethod Method, string Address, (string Name, string Value) Key, string? Body, string Type)
    {
        public (string? Name, string? Value) Header { get; init; }
    }
}
