namespace Evenstep.Planning.Purchases;

/// <summary>An amount of the catalogue's currency, in whole hundredths: amounts have at most two decimal places, so hundredths
/// are exact, and whole numbers are what both engines count in. May be negative: more is spent than there is.</summary>
/// <param name="Hundredths">For a solver that takes whole numbers only, and for figures that mix money with something else.</param>
internal readonly record struct Money(long Hundredths) : IComparable<Money>
{
    private const int HundredthsPerUnit = 100;

    public static Money Zero => default;

    /// <summary>What two amounts that differ differ by at the least.</summary>
    public static Money Smallest => new(1);

    /// <summary>More than anything costs: no bound at all. Nothing may be added to it.</summary>
    public static Money MaxValue => new(long.MaxValue);

    public static Money operator +(Money a, Money b) => new(a.Hundredths + b.Hundredths);

    public static Money operator -(Money a, Money b) => new(a.Hundredths - b.Hundredths);

    public static Money operator *(long count, Money each) => new(count * each.Hundredths);

    public static bool operator <(Money a, Money b) => a.Hundredths < b.Hundredths;

    public static bool operator >(Money a, Money b) => a.Hundredths > b.Hundredths;

    public static bool operator <=(Money a, Money b) => a.Hundredths <= b.Hundredths;

    public static bool operator >=(Money a, Money b) => a.Hundredths >= b.Hundredths;

    public static Money Min(Money a, Money b) => a < b ? a : b;

    public static Money Max(Money a, Money b) => a > b ? a : b;

    /// <summary>The same amount; what is finer than hundredths, which no reader lets through, is dropped.</summary>
    public static Money Of(decimal amount) => new((long)(amount * HundredthsPerUnit));

    /// <summary>The same amount in the catalogue's currency.</summary>
    public decimal ToDecimal() => Hundredths / (decimal)HundredthsPerUnit;

    public int CompareTo(Money other) => Hundredths.CompareTo(other.Hundredths);
}

/// <summary>Sums of money.</summary>
internal static class MoneySums
{
    public static Money Sum<T>(this IEnumerable<T> source, Func<T, Money> amountOf)
    {
        var sum = Money.Zero;
        foreach (var one in source)
        {
            sum += amountOf(one);
        }

        return sum;
    }
}
