using System.Text;
using System.Text.RegularExpressions;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Features.Assessments;
using Evenstep.Service.Features.Batches;
using Evenstep.Service.Features.SecondOpinions;
using Evenstep.Service.Http.Bodies;

namespace Evenstep.Service.Tests.Judges;

/// <summary>What the service's own readers say of a body.</summary>
/// <param name="Faults">Null for a body that is not even JSON.</param>
internal sealed partial record ReaderVerdict(IReadOnlyList<Fault>? Faults)
{
    private static readonly CatalogueSnapshot CatalogueSnapshot = CatalogueSnapshot.WithDemo();

    public bool IsTaken => Faults is { Count: 0 };

    /// <summary>Whether a schema that says all that a schema can must take the body.</summary>
    public bool SchemaMustTakeIt => Faults is not null && !Faults.Any(IsSeenBySchema);

    public static ReaderVerdict Of(string path, string text)
    {
        using var body = OpenedBody.Parse(Encoding.UTF8.GetBytes(text));
        if (body.Refusal is not null)
        {
            return new ReaderVerdict((IReadOnlyList<Fault>?)null);
        }

        var faults = new Faults();
        _ = path switch
        {
            "/v1/assessments" => (object?)AssessmentReader.Read(body.Json, CatalogueSnapshot, faults),
            "/v1/catalogues/{id}" => CatalogueReader.ReadStored("shop", body.Json, faults),
            "/v1/recommendations/batch" => FieldTable<BatchLineRequest>.Whole.Read(body.Json, RequestPointer.Root, faults) is { } line
                ? RecommendationReader.Read(line.Planning, body.Json, CatalogueSnapshot, faults, out _)
                : null,
            "/v1/second-opinions" => SecondOpinionReader.Read(body.Json, CatalogueSnapshot, faults),
            _ => RecommendationReader.Read(body.Json, CatalogueSnapshot, faults),
        };
        return new ReaderVerdict(faults.Shown);
    }

    public override string ToString() =>
        Faults is null ? "not JSON" : string.Join("; ", Faults.Select(fault => $"{fault.Pointer} {Words<FaultCode>.Of(fault.Code)}"));

    /// <summary>The classes of faults that a JSON Schema cannot express, by their codes; all others it must see.</summary>
    private static bool IsSeenBySchema(Fault fault) => fault.Code switch
    {
        // Arithmetic on decimals, and one number against another.
        FaultCode.TooManyDecimals or FaultCode.EmptyRange => false,

        // What other parts of the body, or the shelf, know.
        FaultCode.UnknownItem or FaultCode.UnknownTelescope or FaultCode.UnknownCatalogue => false,

        // Of repetitions only those of equal elements; ids, names and fields are out of sight.
        FaultCode.Duplicate => Different().IsMatch(fault.Pointer),

        // JSON Schema has texts of any code units.
        FaultCode.InvalidText => !HalfPair().IsMatch(fault.Message.In(Language.English)),
        _ => true,
    };

    [GeneratedRegex("(/factors|^/shoppingList)/[0-9]+$")]
    private static partial Regex Different();

    [GeneratedRegex("^(Text|The name) that is not valid Unicode")]
    private static partial Regex HalfPair();
}
