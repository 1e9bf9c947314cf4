namespace Evenstep.Service.Catalogues.Csv;

/// <summary>What a CSV is read for.</summary>
internal enum CsvPurpose
{
    /// <summary>Whole items: the columns that every item needs must be there.</summary>
    Items,

    /// <summary>Changes of items: only `id` must be there; an empty cell leaves the item as it is.</summary>
    Changes,
}
