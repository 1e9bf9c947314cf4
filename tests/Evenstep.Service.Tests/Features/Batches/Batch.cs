using System.Text.Json.Nodes;
using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Features.Batches;

/// <summary>Lines of batches.</summary>
internal static class Batch
{
    public const string Path = "/v1/recommendations/batch";
    public const string MediaType = "application/x-ndjson";

    /// <summary>An example as a line.</summary>
    public static string Line(string id, string example = "recommendation-shortest")
    {
        var request = JsonNode.Parse(Repository.Example(example))!.AsObject();
        request.Insert(0, "id", id);
        return request.ToJsonString();
    }

    /// <summary>A request that no other is equal to.</summary>
    public static string LineOfItsOwn(string id, int number) =>
        $$"""{"id":"{{id}}","telescopes":[{"id":"jetty-112"}],"catalogue":{"id":"demo"},"limits":{"budget":{{50 + number}}} }""";

    public static LineAnswer[] LinesOf(string body) =>
        [.. body.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(Reading.Read<LineAnswer>)];
}
