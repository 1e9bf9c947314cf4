using Evenstep.Service.Tests.Answers;

namespace Evenstep.Service.Tests.Features.Assessments;

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

        var assessment = answer.As<Assessment>();
        var telescope = Assert.Single(assessment.Telescopes);
        var view = telescope.Ladder.Views[0];
        Assert.Equal(("telescope 1", "owned-1"), (telescope.Name, view.EyepieceId));
        Assert.Equal((40.6, 1.281, 306.5), (view.Power, view.TrueFieldDeg, view.DriftSeconds));
        Assert.Equal("eye-relief", view.NotUsableBecause);
        Assert.Null(assessment.Kit.LargestStep);
        Assert.Equal(["sun", "eyesight"], assessment.Cautions.Select(one => one.Code));
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

        Assert.Equal(2, ViewsOf(with).Count);
        Assert.Empty(ViewsOf(without));
    }

    private static IReadOnlyList<View> ViewsOf(Answer answer) => answer.As<Assessment>().Telescopes[0].Ladder.Views;
}
