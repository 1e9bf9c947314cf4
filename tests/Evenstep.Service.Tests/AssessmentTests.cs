using System.Text.Json;

namespace Evenstep.Service.Tests;

public sealed class AssessmentTests(Service service) : IClassFixture<Service>
{
    public static TheoryData<string> Examples => [.. Repository.Examples("assessment")];

    [Theory]
    [MemberData(nameof(Examples))]
    public async Task Every_example_is_answered(string example)
    {
        var answer = await service.PostAsync("/v1/assessments", Repository.Example(example));

        Assert.Equal((200, "application/json"), (answer.Status, answer.ContentType));
    }

    [Fact]
    public async Task Views_are_judged_and_rounded_for_reading()
    {
        var answer = await service.PostAsync("/v1/assessments", """
            {
              "telescopes": [ { "apertureMm": 203, "focalLengthMm": 1218, "focuserBarrel": "2in" } ],
              "observer": { "age": 52, "wearsSpectacles": true },
              "owned": [ { "kind": "eyepiece", "focalLengthMm": 30, "apparentFieldDeg": 52, "eyeReliefMm": 14, "barrel": "1.25in" } ]
            }
            """);

        var telescope = answer.Json.GetProperty("telescopes")[0];
        var view = telescope.GetProperty("ladder").GetProperty("views")[0];
        Assert.Equal("telescope 1", telescope.GetProperty("name").GetString());
        Assert.Equal("owned-1", view.GetProperty("eyepieceId").GetString());
        Assert.Equal("40.6", view.GetProperty("power").GetRawText());
        Assert.Equal("1.281", view.GetProperty("trueFieldDeg").GetRawText());
        Assert.Equal("306.5", view.GetProperty("driftSeconds").GetRawText());
        Assert.Equal("eye-relief", view.GetProperty("notUsableBecause").GetString());
        Assert.Equal(JsonValueKind.Null, answer.Json.GetProperty("kit").GetProperty("largestStep").ValueKind);
        Assert.Equal(["sun", "eyesight"], answer.Json.GetProperty("cautions").EnumerateArray().Select(one => one.GetProperty("code").GetString()));
    }

    [Fact]
    public async Task Items_packed_with_a_listed_telescope_count_as_owned_once()
    {
        var with = await service.PostAsync("/v1/assessments", """
            { "telescopes": [ { "id": "capstan-152" } ], "owned": [ { "id": "stayrope-2x" } ], "catalogue": { "id": "demo" } }
            """);
        var without = await service.PostAsync("/v1/assessments", """
            { "telescopes": [ { "id": "capstan-152", "withIncluded": false } ], "owned": [ { "id": "stayrope-2x" } ], "catalogue": { "id": "demo" } }
            """);

        Assert.Equal(2, ViewsOf(with).GetArrayLength());
        Assert.Equal(0, ViewsOf(without).GetArrayLength());
    }

    private static JsonElement ViewsOf(Answer answer) => answer.Json.GetProperty("telescopes")[0].GetProperty("ladder").GetProperty("views");
}
