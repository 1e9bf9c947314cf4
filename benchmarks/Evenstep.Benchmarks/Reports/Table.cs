using System.Text;

namespace Evenstep.Benchmarks.Reports;

/// <summary>A table in Markdown: the first columns are text, the rest are numbers.</summary>
internal sealed class Table(int textColumns, params string[] heads)
{
    private readonly List<string[]> rows = [];

    public void Add(params string[] cells) => rows.Add(cells);

    public override string ToString()
    {
        var text = new StringBuilder();
        Write(text, heads);
        Write(text, heads.Select((_, column) => column < textColumns ? "---" : "--:"));
        foreach (var row in rows)
        {
            Write(text, row);
        }

        return text.ToString();
    }

    private static void Write(StringBuilder text, IEnumerable<string> cells) =>
        text.Append("| ").AppendJoin(" | ", cells).Append(" |").AppendLine();
}
