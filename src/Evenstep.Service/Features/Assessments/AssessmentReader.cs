using System.Collections.Immutable;
using System.Text.Json;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Targets;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Features.Assessments;

/// <summary>A request for an assessment, understood: the problem of buying nothing.</summary>
internal sealed record AssessmentAsked
{
    public required PurchaseProblem Problem { get; init; }

    public required Catalogue? Catalogue { get; init; }

    /// <summary>For what a view is wanted; null if that was not asked.</summary>
    public required ImmutableArray<AskedTarget>? Targets { get; init; }
}

/// <summary>Understands a request for an assessment, or says all that is wrong with it.</summary>
internal static class AssessmentReader
{
    private static readonly RequestPointer MustFrame = RequestPointer.Root.To(nameof(AssessmentRequest.Preferences)).To(nameof(PreferencesRequest.MustFrame));

    /// <summary>The request understood; null with the faults filled.</summary>
    public static AssessmentAsked? Read(JsonElement body, CatalogueSnapshot snapshot, Faults faults)
    {
        if (FieldTable<AssessmentRequest>.Whole.Read(body, RequestPointer.Root, faults) is not { } request)
        {
            return null;
        }

        var setup = SetupReader.Read(request.Kit, snapshot, faults);
        var demands = new Demands { MustFrame = SetupReader.ReadFramings(request.Preferences?.MustFrame, setup, MustFrame, faults) };
        return faults.Any ? null : new AssessmentAsked
        {
            Problem = ProblemOf(request.Preferences, setup, demands),
            Catalogue = setup.Catalogue,
            Targets = AskedTarget.Of(request.Explain?.Targets),
        };
    }

    private static PurchaseProblem ProblemOf(PreferencesRequest? request, Setup setup, Demands demands)
    {
        var standard = new Preferences();
        return new PurchaseProblem
        {
            Telescopes = setup.TelescopesInUse,
            Observer = setup.Observer,
            Owned = setup.Owned,
            Catalogue = [],
            Limits = new Limits { Budget = 0 },
            Preferences = standard with
            {
                LeastStep = request?.LeastStep ?? standard.LeastStep,
                EnoughStep = request?.EnoughStep ?? standard.EnoughStep,
                LeastApparentFieldDeg = request?.LeastApparentFieldDeg,
            },
            Demands = demands,
        };
    }
}
