using System.Text;
using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>Rows as CSV after RFC 4180.</summary>
internal static class CsvText
{
    /// <summary>Appends a row: fields with separators between, quoted where they must be, ended by CR LF.</summary>
    public static void AppendRow(StringBuilder output, ValueList<string> fields, char separator = ',')
    {
        for (var i = 0; i < fields.Count; i++)
        {
            if (i > 0)
            {
                output.Append(separator);
            }

            Append(output, fields[i], separator, fields.Count == 1);
        }

        output.Append("\r\n");
    }

    /// <summary>A row of one empty field would be an empty line, which readers skip; it is quoted.</summary>
    private static void Append(StringBuilder output, string field, char separator, bool isAlone)
    {
        if (
            field.AsSpan().IndexOfAny("\",\r\n") < 0
            && !field.Contains(separator)
            && !(isAlone && field.Length == 0)
            && field.AsSpan().Trim(' ').Length == field.Length
        )
        {
            output.Append(field);
            return;
        }

        output.Append('"').Append(field.Replace("\"", "\"\"", StringComparison.Ordinal)).Append('"');
    }
}
