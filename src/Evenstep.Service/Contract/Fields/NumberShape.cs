using System.Globalization;
using System.Text.Json;
using Evenstep.Planning.Optics;
using Microsoft.OpenApi;

namespace Evenstep.Service.Contract.Fields;

/// <summary>A number within bounds, in a unit.</summary>
internal sealed class NumberShape(Bounds bounds, string unit) : Shape<double?>
{
    public override ErrorMessage Allowed { get; } = unit.Length == 0
        ? ErrorMessage.Of("error/allowed/number", ("least", bounds.Least), ("most", bounds.Most))
        : ErrorMessage.Of("error/allowed/number/unit", ("least", bounds.Least), ("most", bounds.Most), ("unit", ErrorMessage.Of($"error/unit/{unit}")));

    public override double? Read(JsonElement value, RequestPointer pointer, Faults faults)
    {
        if (value.ValueKind != JsonValueKind.Number)
        {
            ReportWrongType(value, pointer, faults);
            return null;
        }

        // 1e400 becomes infinity, which no bounds contain.
        if (value.TryGetDouble(out var number) && bounds.Contain(number))
        {
            return number;
        }

        faults.Add(pointer, FaultCode.OutOfRange, () => Refused(value));
        return null;
    }

    public override IOpenApiSchema Describe(OpenApiDocument document) => Schemas.Number(bounds);

    protected override ErrorMessage HintOn(JsonElement value) => NumberAsText.HintOn(value);
}

/// <summary>A whole number within bounds.</summary>
internal sealed class WholeShape(int least, int most) : Shape<int?>
{
    public override ErrorMessage Allowed { get; } = ErrorMessage.Of("error/allowed/whole-number", ("least", least), ("most", most));

    public override int? Read(JsonElement value, RequestPointer pointer, Faults faults)
    {
        if (value.ValueKind != JsonValueKind.Number)
        {
            ReportWrongType(value, pointer, faults);
            return null;
        }

        var number = value.GetDouble();
        if (number >= least && number <= most && number == Math.Floor(number))
        {
            return (int)number;
        }

        faults.Add(pointer, FaultCode.OutOfRange, () => Refused(value));
        return null;
    }

    public override IOpenApiSchema Describe(OpenApiDocument document) => Schemas.Whole(least, most);
}

/// <summary>An amount in the catalogue's currency, with at most two decimal places.</summary>
internal sealed class MoneyShape(Bounds bounds) : Shape<decimal?>
{
    private const int MostDecimals = 2;

    public override ErrorMessage Allowed { get; } = ErrorMessage.Of("error/allowed/amount", ("least", bounds.Least), ("most", bounds.Most));

    public override decimal? Read(JsonElement value, RequestPointer pointer, Faults faults)
    {
        if (value.ValueKind != JsonValueKind.Number)
        {
            ReportWrongType(value, pointer, faults);
            return null;
        }

        var fault = !bounds.Contain(value.GetDouble()) ? FaultCode.OutOfRange
            : DecimalsOf(value.GetRawText()) > MostDecimals ? FaultCode.TooManyDecimals
            : (FaultCode?)null;
        if (fault is not { } code)
        {
            return value.GetDecimal();
        }

        faults.Add(pointer, code, () => Refused(value));
        return null;
    }

    public override IOpenApiSchema Describe(OpenApiDocument document) => Schemas.Number(bounds);

    protected override ErrorMessage HintOn(JsonElement value) => NumberAsText.HintOn(value);

    /// <summary>Decimal places that carry a digit, counted in the text: a decimal would already have rounded.</summary>
    private static long DecimalsOf(string number)
    {
        var exponentAt = number.AsSpan().IndexOfAny('e', 'E');
        var mantissa = exponentAt < 0 ? number : number[..exponentAt];
        var pointAt = mantissa.IndexOf('.', StringComparison.Ordinal);
        var digits = mantissa.Replace(".", "", StringComparison.Ordinal);
        var significant = digits.TrimEnd('0');
        if (significant.TrimStart('-', '0').Length == 0)
        {
            return 0;
        }

        var written = pointAt < 0 ? 0 : mantissa.Length - pointAt - 1;
        var exponent = exponentAt < 0 ? 0 : Exponent(number[(exponentAt + 1)..]);
        return written - (digits.Length - significant.Length) - exponent;
    }

    /// <summary>Huge exponents stand for themselves: they only reach this far in a number that is nearly 0.</summary>
    private static long Exponent(string text) =>
        int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var exponent) ? exponent : int.MinValue;
}
