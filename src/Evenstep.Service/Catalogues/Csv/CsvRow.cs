namespace Evenstep.Service.Catalogues.Csv;

/// <summary>A row of a CSV.</summary>
/// <param name="Line">The line of the file that it begins on, from 1.</param>
/// <param name="Cells">As they stand, without their quotation marks and the white space around them.</param>
internal sealed record CsvRow(int Line, string[] Cells)
{
    public bool IsBlank => Array.TrueForAll(Cells, string.IsNullOrWhiteSpace);
}
