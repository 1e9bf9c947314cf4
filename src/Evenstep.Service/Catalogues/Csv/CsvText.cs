using System.Text;
using System.Text.Unicode;
using Evenstep.Service.Contract.Fields;

namespace Evenstep.Service.Catalogues.Csv;

/// <summary>Sees to it that a CSV is text in UTF-8.</summary>
internal static class CsvText
{
    private const string HowToSave = "Save the file as CSV in UTF-8.";

    /// <summary>The bytes themselves, or where they are no text with what is wrong replaced; it is reported by its line.</summary>
    public static ReadOnlyMemory<byte> Checked(ReadOnlyMemory<byte> bytes, Faults faults)
    {
        var given = bytes.Span;
        if (given.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || given.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            faults.Add(CsvTable.PointerOf(1), FaultCode.InvalidText, () => $"The file is in UTF-16. {HowToSave}");
            return ReadOnlyMemory<byte>.Empty;
        }

        if (Utf8.IsValid(given) && !given.Contains((byte)0))
        {
            return bytes;
        }

        ReportLines(given, faults);
        return Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(given).Replace('\0', '\uFFFD'));
    }

    private static void ReportLines(ReadOnlySpan<byte> bytes, Faults faults)
    {
        var end = bytes.Contains((byte)'\n') ? (byte)'\n' : (byte)'\r';
        var line = 0;
        foreach (var range in bytes.Split(end))
        {
            var text = bytes[range];
            line++;
            if (!Utf8.IsValid(text))
            {
                faults.Add(CsvTable.PointerOf(line), FaultCode.InvalidText, () => $"There are bytes in this line that are not UTF-8. {HowToSave}");
            }
            else if (text.Contains((byte)0))
            {
                faults.Add(CsvTable.PointerOf(line), FaultCode.InvalidText, () => $"There is a NUL in this line, which no text has. {HowToSave}");
            }
        }
    }
}
