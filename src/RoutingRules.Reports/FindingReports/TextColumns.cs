namespace RoutingRules.Reports.FindingReports;

/// <summary>Rows of text in columns: each column as wide as its widest cell, the last one as it comes.</summary>
internal sealed class TextColumns
{
    private readonly List<string[]> rows = [];
    private readonly List<int> widths = [];

    public bool HasRows => rows.Count > 0;

    public void Add(params string[] cells)
    {
        rows.Add(cells);
        for (var i = 0; i < cells.Length; i++)
        {
            if (i == widths.Count)
            {
                widths.Add(0);
            }

            widths[i] = Math.Max(widths[i], cells[i].Length);
        }
    }

    public void WriteTo(TextWriter output, string indent)
    {
        foreach (var row in rows)
        {
            var line = indent;
            for (var i = 0; i < row.Length; i++)
            {
                line += i + 1 < row.Length ? row[i].PadRight(widths[i] + 2) : row[i];
            }

            output.Write(line.TrimEnd() + "\n");
        }
    }
}
