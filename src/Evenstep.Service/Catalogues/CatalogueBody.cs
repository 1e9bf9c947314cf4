using System.Net.Mime;
using System.Text.Json;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Csv;
using Evenstep.Service.Catalogues.Warnings;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Bodies;
using Evenstep.Service.Http.Problems;

namespace Evenstep.Service.Catalogues;

/// <summary>A whole catalogue as it was sent: as JSON, or its items as a CSV.</summary>
/// <param name="Refusal">The answer that turns it away; null if nothing is known against it.</param>
/// <param name="Make">What becomes of the catalogue that is stored, null if there is none.</param>
internal sealed record CatalogueBody(ProblemResult? Refusal, Func<Catalogue?, Change> Make)
{
    /// <summary>Room for the most items with ten thousand bytes each; far longer ones fit if they are fewer.</summary>
    public const int MostMebibytes = 32;

    public static readonly BodyPolicy Rule = new(
        [MediaTypeNames.Application.Json, MediaTypeNames.Text.Csv], MostMebibytes, "Shorten the attributes, or store several catalogues.");

    public static async Task<CatalogueBody> ReceiveAsync(string id, HttpRequest request, CancellationToken cancellationToken)
    {
        var received = await BodyReader.ReceiveAsync(request, Rule, cancellationToken);
        return received.Refusal is { } refusal ? Refused(refusal)
            : Rule.TypeOf(request.ContentType) == MediaTypeNames.Text.Csv ? OfCsv(id, request.Query, received.Bytes)
            : OfJson(id, request.Query, received.Bytes);
    }

    private static CatalogueBody Refused(ProblemResult refusal) => new(refusal, _ => Change.Refused(refusal));

    private static CatalogueBody OfJson(string id, IQueryCollection query, ReadOnlyMemory<byte> bytes)
    {
        using var body = OpenedBody.Parse(bytes);
        if (body.Refusal is { } refusal)
        {
            return Refused(refusal);
        }

        var faults = new Faults();
        CsvQuery.ReportStray(query, CsvQuery.OfItems, faults);
        var change = ChangeOf(id, body.Json, RequestPointer.Root, faults, new WarningList());
        return change.Refusal is { } refused ? Refused(refused) : new CatalogueBody(null, current => change with { IsNew = current is null });
    }

    /// <summary>A CSV is the catalogue's items alone: its telescopes stay, and so does its currency if no other is named.</summary>
    private static CatalogueBody OfCsv(string id, IQueryCollection query, ReadOnlyMemory<byte> bytes)
    {
        var faults = new Faults();
        var said = CsvQuery.Read(query, CsvQuery.OfItems, faults);
        var items = CsvItems.Read(bytes, CsvPurpose.Items, said.RefuseUnknown, faults, new WarningList());
        return new CatalogueBody(null, current =>
        {
            var json = items.InCatalogue(said.Currency ?? current?.Currency, TelescopesOf(current));
            return ChangeOf(id, json, items.Root, items.Faults.Copy(), items.Warnings.Copy()) with { IsNew = current is null };
        });
    }

    private static JsonElement? TelescopesOf(Catalogue? current) =>
        current is null ? null : JsonElement.Parse(current.Content.Span).GetProperty(FieldName.Of(nameof(CatalogueRequest.Telescopes)));

    private static Change ChangeOf(string id, JsonElement json, RequestPointer root, Faults faults, WarningList warnings)
    {
        if (CatalogueReader.ReadStored(id, json, root, faults) is not { } read)
        {
            return Change.Refused(ProblemResult.Of(faults));
        }

        CatalogueChecks.Check(read.Request, root, warnings);
        return new Change(read.Catalogue, false) { Warnings = warnings };
    }
}
