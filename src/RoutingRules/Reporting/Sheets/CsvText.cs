using System.Text;
using RoutingRules.Model;

namespace RoutingRules.Reporting.Sheets;

/// <summary>Rows as CSV after RFC 4180.</summary>
internal static class CsvText
{
    /// <summary>Appends a row: fields with commas between, quoted where they must be, ended by CR LF.</summary>
    public static void AppendRow(StringBuilder output, ValueList<string> fields)
    {
        for (var i = 0; i < fields.Count; i++)
        {
            output.Append(i == 0 ? "" : ",");
            Append(output, fields[i], fields.Count == 1);
        }

        output.Append("\r\n");
    }

    /// <summary>A row of one empty field would be an empty line, which readers skip; it is quoted.</summary>
    private static void Append(StringBuilder output, string field, bool isAlone)
    {
        if (field.AsSpan().IndexOfAny("\",\r\n") < 0 && !(isAlone && field.Length == 0) && field.AsSpan().Trim(' ').Length == field.Length)
        {
            output.Append(field);
            return;
        }

        output.Append('"').Append(field.Replace("\"", "\"\"", StringComparison.Ordinal)).Append('"');
    }
}
