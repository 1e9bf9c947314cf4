using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Optics;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Contract.Languages;

/// <summary>The values of a remark as they stand in an answer: an object with each by its name, rounded for reading.</summary>
internal sealed record SaidValues(ImmutableArray<RemarkValue> Values);

/// <summary>Writes values straight from the remark: an answer has dozens.</summary>
internal sealed class SaidValuesConverter : JsonConverter<SaidValues>
{
    public override SaidValues Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException("Answers are only written.");

    public override void Write(Utf8JsonWriter writer, SaidValues value, JsonSerializerOptions options) => WriteObject(writer, value.Values.AsSpan());

    private static void WriteObject(Utf8JsonWriter writer, ReadOnlySpan<RemarkValue> values)
    {
        writer.WriteStartObject();
        foreach (var value in values)
        {
            writer.WritePropertyName(value.Name);
            WriteValue(writer, value.Value, value.Decimals);
        }

        writer.WriteEndObject();
    }

    private static void WriteValue(Utf8JsonWriter writer, object? value, int decimals)
    {
        switch (value)
        {
            case null:
                writer.WriteNullValue();
                break;
            case double number:
                writer.WriteNumberValue(Rounded.To(number, decimals));
                break;
            case decimal amount:
                writer.WriteNumberValue(Rounded.Money(amount));
                break;
            case int count:
                writer.WriteNumberValue(count);
                break;
            case Barrel barrel:
                writer.WriteStringValue(Words<Barrel>.Of(barrel));
                break;
            case Item item:
                writer.WriteStringValue(ItemPhrase.NameOf(item));
                break;
            case RemarkValue[] parts:
                WriteObject(writer, parts);
                break;
            case Array list:
                WriteList(writer, list, decimals);
                break;
            default:
                writer.WriteStringValue(value.ToString());
                break;
        }
    }

    private static void WriteList(Utf8JsonWriter writer, Array list, int decimals)
    {
        writer.WriteStartArray();
        foreach (var one in list)
        {
            WriteValue(writer, one, decimals);
        }

        writer.WriteEndArray();
    }
}
