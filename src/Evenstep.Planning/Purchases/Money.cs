namespace Evenstep.Planning.Purchases;

/// <summary>An amount in hundredths of the catalogue's currency: amounts have at most two decimal places, so hundredths are
/// exact, and whole numbers are what both engines count in.</summary>
/// <param name="Cents">In hundredths.</param>
internal readonly record struct Money(long Cents)
{
    private const int CentsPerUnit = 100;

    /// <summary>The same amount; what is finer than hundredths, which no reader lets through, is dropped.</summary>
    public static Money Of(decimal amount) => new((long)(amount * CentsPerUnit));

    /// <summary>The same amount in the catalogue's currency.</summary>
    public decimal ToDecimal() => Cents / (decimal)CentsPerUnit;
}
