using System.Collections.Immutable;
using System.Text.Json;
using Evenstep.Service.Catalogues.Content;
using Evenstep.Service.Catalogues.Csv;
using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Http.Negotiation;

namespace Evenstep.Service.Catalogues;

/// <summary>A form in which a stored catalogue is given.</summary>
/// <param name="Form">What it is asked for by.</param>
/// <param name="TagEnding">What its entity tag has after the version, since it is the tag of these bytes and of no others.</param>
/// <param name="Write">Makes the bytes, in UTF-8.</param>
internal sealed record CatalogueForm(AnswerFormat Form, string TagEnding, Func<Catalogue, ReadOnlyMemory<byte>> Write)
{
    public static readonly ImmutableArray<CatalogueForm> All =
    [
        new(AnswerFormat.Json, "", catalogue => catalogue.Content),
        new(AnswerFormat.Csv, "-csv", WriteCsv),
    ];

    /// <summary>The form that a request asks for.</summary>
    public static CatalogueForm AskedFor(HttpRequest request) => All.Single(one => one.Form == OfferedFormats.FormFor(request));

    /// <summary>Its items; a CSV has no room for telescopes.</summary>
    private static ReadOnlyMemory<byte> WriteCsv(Catalogue catalogue)
    {
        using var bytes = new MemoryStream();
        using var content = JsonDocument.Parse(catalogue.Content);
        CsvExport.Write(bytes, [.. content.RootElement.GetProperty(FieldName.Of(nameof(CatalogueRequest.Items))).EnumerateArray()]);
        return bytes.ToArray();
    }
}
