using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Targets;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Features.Assessments;

/// <summary>A request for an assessment as its JSON says it; null for what is missing or faulty.</summary>
internal sealed record AssessmentRequest
{
    public required KitRequest Kit { get; init; }

    public required AssessmentPreferencesRequest? Preferences { get; init; }

    public required AssessmentExplainRequest? Explain { get; init; }
}

internal sealed record AssessmentPreferencesRequest
{
    public required double? LeastStep { get; init; }

    public required double? EnoughStep { get; init; }

    public required double? LeastApparentFieldDeg { get; init; }

    public required IReadOnlyList<FramingRequest?>? MustFrame { get; init; }
}

internal sealed record AssessmentExplainRequest
{
    public required FlagOrList<TargetRequest>? Targets { get; init; }
}

/// <summary>The tables of fields of a request for an assessment.</summary>
internal static class AssessmentFields
{
    private static readonly Field<AssessmentPreferencesRequest> Preferences = Make.Of(
        "preferences",
        new ObjectShape<AssessmentPreferencesRequest>(
            "AssessmentPreferences",
            "By what the kit is judged.",
            [KitFields.LeastStep, KitFields.EnoughStep, KitFields.LeastApparentFieldDeg, KitFields.MustFrame],
            values => new AssessmentPreferencesRequest
            {
                LeastStep = values.Of(KitFields.LeastStep),
                EnoughStep = values.Of(KitFields.EnoughStep),
                LeastApparentFieldDeg = values.Of(KitFields.LeastApparentFieldDeg),
                MustFrame = values.Of(KitFields.MustFrame),
            }),
        "By what the kit is judged.");

    private static readonly Field<AssessmentExplainRequest> Explain = Make.Of(
        "explain",
        new ObjectShape<AssessmentExplainRequest>(
            "AssessmentExplain",
            "What else the answer is to say.",
            [TargetFields.Targets],
            values => new AssessmentExplainRequest { Targets = values.Of(TargetFields.Targets) }),
        "What else the answer is to say.");

    public static readonly ObjectShape<AssessmentRequest> Body = new(
        "AssessmentRequest",
        "A telescope and what there is to look through; null means the default wherever a field is optional.",
        [TelescopeFields.Telescopes.Required(), ObserverFields.Observer, KitFields.Site, KitFields.Owned, KitFields.Catalogue, Preferences, Explain],
        values => new AssessmentRequest { Kit = KitFields.BuildKit(values), Preferences = values.Of(Preferences), Explain = values.Of(Explain) });
}
