using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Catalogues.Warnings;

/// <summary>Data that can hardly be right. It refuses nothing.</summary>
internal sealed record WarningAnswer
{
    /// <summary>Where: a JSON Pointer into the catalogue, or for a CSV a place such as /line/5/fieldStopMm.</summary>
    public required string Pointer { get; init; }

    /// <summary>The code, the same in every language; listed in this document's description.</summary>
    public required string Code { get; init; }

    /// <summary>The sentence, in the language of the answer.</summary>
    public required Sentence Text { get; init; }

    /// <summary>What the sentence is about, by name.</summary>
    public required SaidValues Values { get; init; }
}
