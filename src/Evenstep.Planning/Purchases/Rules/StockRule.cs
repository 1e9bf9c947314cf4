namespace Evenstep.Planning.Purchases;

/// <summary>Every item bought is in stock.</summary>
internal static class StockRule
{
    public static bool Excludes(ItemAlone alone) => !alone.Item.InStock;
}
