using System.Collections.Immutable;
using System.Text.Json;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Answering.Kits;
using Evenstep.Service.Answering.Targets;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Answering.Recommendations;

/// <summary>A request for a recommendation, understood.</summary>
internal sealed record RecommendationAsked
{
    public required PurchaseProblem Problem { get; init; }

    public required Catalogue Catalogue { get; init; }

    public required ExcludedAs Excluded { get; init; }

    /// <summary>Whether the request says itself what is wanted of zooms.</summary>
    public required bool NamesZooms { get; init; }

    /// <summary>Whether the second engine is to confirm the plan.</summary>
    public required bool Certify { get; init; }

    /// <summary>Whether the best plan without each purchase is wanted too.</summary>
    public required bool IfUnavailable { get; init; }

    /// <summary>The seeing, in arcseconds, that the power ranges are laid out for.</summary>
    public required double SeeingArcsec { get; init; }

    /// <summary>Whether it is wanted how far some inputs may be otherwise.</summary>
    public required bool HoldsWhile { get; init; }

    /// <summary>For what a view is wanted; null if that was not asked.</summary>
    public required ImmutableArray<AskedTarget>? Targets { get; init; }
}

/// <summary>Makes a purchase problem of a body, or says all that is wrong with it.</summary>
internal static class RecommendationReader
{
    private static readonly RequestPointer AtPreferences = RequestPointer.Root.To(nameof(RecommendationRequest.Preferences));

    /// <summary>The request understood; null with the faults filled.</summary>
    public static RecommendationAsked? Read(JsonElement body, CatalogueSnapshot snapshot, Faults faults) =>
        FieldTable<RecommendationRequest>.Whole.Read(body, RequestPointer.Root, faults) is { } request ? Read(request, body, snapshot, faults, out _) : null;

    /// <summary>The same, of a request whose fields are read.</summary>
    /// <param name="request">The fields.</param>
    /// <param name="body">What they were read from.</param>
    /// <param name="snapshot">The stored catalogues.</param>
    /// <param name="faults">What is wrong.</param>
    /// <param name="catalogue">The catalogue, however faulty the rest is; null where it is missing, faulty or unknown.</param>
    public static RecommendationAsked? Read(
        RecommendationRequest request, JsonElement body, CatalogueSnapshot snapshot, Faults faults, out Catalogue? catalogue)
    {
        var setup = SetupReader.Read(request.Kit, snapshot, faults);
        catalogue = setup.Catalogue;
        var demands = DemandsOf(request.Preferences, setup, faults);
        return faults.Any ? null : new RecommendationAsked
        {
            Problem = ProblemOf(request, setup, demands),
            Catalogue = setup.Catalogue!,
            Excluded = request.Explain?.Excluded ?? ExcludedAs.Count,
            NamesZooms = request.Preferences?.Zooms is not null,
            Certify = request.Explain?.Certify ?? false,
            IfUnavailable = request.Explain?.IfUnavailable ?? false,
            SeeingArcsec = setup.SeeingArcsec,
            HoldsWhile = request.Explain?.HoldsWhile ?? false,
            Targets = AskedTarget.Of(request.Explain?.Targets),
        };
    }

    private static PurchaseProblem ProblemOf(RecommendationRequest request, Setup setup, Demands demands) => new()
    {
        Telescopes = setup.TelescopesInUse,
        Observer = setup.Observer,
        Owned = setup.Owned,
        Catalogue = setup.Catalogue!.Assortment,
        Limits = LimitsOf(request.Limits!),
        Preferences = PreferencesOf(request.Preferences),
        Demands = demands,
    };

    private static Limits LimitsOf(LimitsRequest request)
    {
        var standard = new Limits { Budget = request.Budget!.Value };
        return standard with
        {
            MaxPurchases = request.MaxPurchases ?? standard.MaxPurchases,
            MaxBarlows = request.MaxBarlows ?? standard.MaxBarlows,
            MaxPricePerItem = request.MaxPricePerItem,
            MaxItemMassGrams = request.MaxItemMassGrams,
            AllowedOverlaps = request.AllowedOverlaps ?? standard.AllowedOverlaps,
        };
    }

    private static Preferences PreferencesOf(PreferencesRequest? request)
    {
        var standard = new Preferences();
        return request is null ? standard : new Preferences
        {
            Prefer = request.Prefer ?? standard.Prefer,
            LeastStep = request.LeastStep ?? standard.LeastStep,
            EnoughStep = request.EnoughStep ?? standard.EnoughStep,
            LeastApparentFieldDeg = request.LeastApparentFieldDeg,
            AvoidBarlows = request.Barlows is { } barlows ? barlows == Allowing.Avoid : standard.AvoidBarlows,
            AvoidZooms = request.Zooms is { } zooms ? zooms == Allowing.Avoid : standard.AvoidZooms,
            Exclude = [.. (request.Exclude ?? []).OfType<string>()],
        };
    }

    private static Demands DemandsOf(PreferencesRequest? request, Setup setup, Faults faults) => new()
    {
        MustInclude = MustIncludeOf(request?.MustInclude ?? [], setup.Catalogue, faults),
        MustFrame = SetupReader.ReadFramings(request?.MustFrame, setup, AtPreferences.To(nameof(PreferencesRequest.MustFrame)), faults),
        ReticleLeastPower = request?.Reticle?.LeastPower,
    };

    private static ImmutableArray<string> MustIncludeOf(IReadOnlyList<string?> ids, Catalogue? catalogue, Faults faults)
    {
        var pointer = AtPreferences.To(nameof(PreferencesRequest.MustInclude));
        CatalogueReader.ReportUnknown(ids, catalogue, pointer, faults);
        return [.. ids.OfType<string>().Distinct(StringComparer.Ordinal)];
    }
}
