using System.Text;
using RoutingRules.Documents.Text;
using RoutingRules.Reports.Sheets.Contents;

namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>Writes sheets as plain text for terminals and plain printers.</summary>
/// <remarks>
/// Lines of at most 100 characters where words allow, LF only, no escape sequences. Each page starts with a form feed but the first. Thread safe.
/// </remarks>
public static class TextSheetWriter
{
    internal const int LineLength = 100;

    /// <summary>Writes sheets.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="sheet"/> is null.</exception>
    public static string Write(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return Write(PageLayout.Set(sheet));
    }

    internal static string Write(PageSet set)
    {
        var output = new StringBuilder();
        foreach (var page in set.Pages)
        {
            if (output.Length > 0)
            {
                output.Append("\n\f");
            }

            WritePage(output, set, page);
        }

        return output.ToString();
    }

    private static void WritePage(StringBuilder output, PageSet set, Page page)
    {
        output.Append('=', LineLength).Append('\n');
        Wrap(output, "", [set.Title, string.Join(PageSet.Dot, set.Meta), page.Heading, .. page.Facts, set.ViewNote ?? ""]);
        if (set.Cautions is { } cautions)
        {
            output.Append('-', LineLength).Append('\n').Append(PageLayout.CautionsTitle).Append('\n');
            Wrap(output, "- ", cautions);
        }

        output.Append('=', LineLength).Append('\n');
        WriteTables(output, page);
    }

    internal static void WriteTables(StringBuilder output, Page page)
    {
        foreach (var table in page.Tables)
        {
            output.Append('\n');
            TextTable.Write(output, table);
        }
    }

    /// <summary>Paragraphs, each after a lead such as the dash of a list; an empty one is none.</summary>
    internal static void Wrap(StringBuilder output, string lead, IEnumerable<string> texts)
    {
        foreach (var text in texts)
        {
            var before = lead;
            foreach (var line in TextTable.Wrap(VisibleText.OfPlain(text), LineLength - lead.Length))
            {
                output.Append(before).Append(line).Append('\n');
                before = new string(' ', lead.Length);
            }
        }
    }
}
