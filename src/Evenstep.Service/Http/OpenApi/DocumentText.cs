using Evenstep.Service.Contract.Fields;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Contract.Problems;
using Evenstep.Service.Http.Headers;
using Microsoft.OpenApi;

namespace Evenstep.Service.Http.OpenApi;

/// <summary>What the document says of the whole service, with every code that an answer can hold.</summary>
internal static class DocumentText
{
    private static readonly Dictionary<string, string> Sections = new()
    {
        ["breach"] = "`list.breaches`",
        ["caution"] = "`cautions`",
        ["conflict"] = "`conflicts.demands` (beside these, any of `excluded`)",
        ["difference"] = "`choices[].differences`",
        ["exclusion"] = "`excluded`",
        ["note"] = "`notes`",
        ["verdict"] = "`verdict`",
        ["reason"] = "`purchases[].reasons`",
        ["source"] = "`sources` of targets",
        ["target"] = "targets that have a common name, by id",
        ["warning"] = "`warnings` about a catalogue",
    };

    /// <summary>Frames of sentences, which are no codes of their own.</summary>
    private static readonly string[] NoCodes =
        ["alone", "beside", "in-telescope", "no-candidate", "no-view", "not-bought", "remedies", "remedy", "together", "widest", "with"];

    public static readonly OpenApiInfo Info = new()
    {
        Title = "Evenstep",
        Version = "1.0",
        Summary = "Recommends which eyepieces, zooms and Barlows to buy for a telescope: the proven best set.",
        Description = Description(),
        License = new OpenApiLicense { Name = "MIT License", Identifier = "MIT" },
    };

    private static string Description() =>
        $"""
        Send a telescope, a catalogue and a budget; get the set of purchases whose powers make the most even steps, with a
        proof that none is better. Money is in the catalogue's currency, with at most two decimal places. A field that is
        not known is refused by name. `null` means the default wherever a field is optional. Later versions may add fields
        to answers, and codes to the lists below.

        ## Errors

        Every error is `application/problem+json` (RFC 9457). Its `type` is one of

        {Lines(ProblemKind.All.Select(kind => $"`{kind.Type}` ({kind.Status}): {kind.Title.In(Language.English)}"))}

        A refused body names all its faults at once in `errors`, by JSON Pointer (RFC 6901): at most {Faults.MostShown}, and in
        `moreErrors` how many more. Their codes: {ErrorText.List(Words<FaultCode>.All)}.

        A method that an address does not take is answered with 405, and `Allow` names those that it takes; OPTIONS with 204 and the
        same header. HEAD goes with every GET. Before any operation is asked, a request may be answered with 400 or 505 (it is no
        HTTP that can be read), 408 (it came too slowly), 414 (its address is longer than {RequestSize.MostTargetCharacters} characters)
        or 431 (its headers are longer than {RequestSize.MostHeaderCharacters} characters).

        ## What is said in words

        Every sentence comes with a code and with the values it is made of, so that a shop can put it in its own words. Codes,
        values and names are the same in every language; `Accept-Language` chooses that of the sentences, of
        {ErrorText.List(Language.All.Select(language => language.Tag))} (the first, if none of them is asked for). Errors are in it too where all that is
        said of them can be, and otherwise in English: `Content-Language` says which.

        {Lines(Language.English.Sentences.Keys.Select(key => key.Split('/')).Where(parts => Sections.ContainsKey(parts[0]))
            .GroupBy(parts => parts[0], parts => parts[1]).OrderBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => $"{Sections[group.Key]}: {CodesOf(group)}"))}
        """;

    private static string CodesOf(IEnumerable<string> codes) =>
        ErrorText.List(codes.Where(code => !NoCodes.Contains(code)).Distinct().Order(StringComparer.Ordinal));

    private static string Lines(IEnumerable<string> lines) => string.Join('\n', lines.Select(line => $"- {line}"));
}
