using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Features.Assessments;

/// <summary>A request for an assessment as its JSON says it; null for what is missing or faulty.</summary>
[Schema("AssessmentRequest", "A telescope and what there is to look through; null means the default wherever a field is optional.")]
internal sealed record AssessmentRequest
{
    [FieldsOf<KitRequest>]
    public KitRequest Kit { get; init; } = new();

    [Shaped(typeof(AssessmentShapes), nameof(AssessmentShapes.Preferences), "By what the kit is judged.")]
    public PreferencesRequest? Preferences { get; init; }

    [Shaped(typeof(AssessmentShapes), nameof(AssessmentShapes.Explain), "What else the answer is to say.")]
    public ExplainRequest? Explain { get; init; }
}

/// <summary>What of a request for a recommendation an assessment takes too.</summary>
internal static class AssessmentShapes
{
    public static readonly ObjectShape<PreferencesRequest> Preferences = new(
        "AssessmentPreferences",
        "By what the kit is judged.",
        [
            .. FieldTable<PreferencesRequest>.All(
                nameof(PreferencesRequest.LeastStep),
                nameof(PreferencesRequest.EnoughStep),
                nameof(PreferencesRequest.LeastApparentFieldDeg),
                nameof(PreferencesRequest.MustFrame)),
        ]);

    public static readonly ObjectShape<ExplainRequest> Explain = new(
        "AssessmentExplain", "What else the answer is to say.", [FieldTable<ExplainRequest>.Of(nameof(ExplainRequest.Targets))]);
}
