using System.Text;
using RoutingRules.Documents.Text;
using RoutingRules.Reports.Sheets.Contents;

namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>Writes sheets as plain text for terminals and plain printers.</summary>
/// <remarks>Lines of at most 100 characters where words allow, LF only, no escape sequences. Each page starts with a form feed but the first. Thread safe.</remarks>
public static class TextSheetWriter
{
    internal const int LineLength = 100;

    /// <summary>Writes sheets.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="sheet"/> is null.</exception>
    public static string Write(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var output = new StringBuilder();
        foreach (var page in PageLayout.Pages(sheet))
        {
            if (output.Length > 0)
            {
                output.Append("\n\f");
            }

            WritePage(output, sheet, page);
        }

        return output.ToString();
    }

    private static void WritePage(StringBuilder output, Sheet sheet, Page page)
    {
        output.Append('=', LineLength).Append('\n');
        Wrap(output, "", sheet.Head.Title);
        Wrap(output, "", string.Join(" \u00b7 ", PageLayout.Meta(sheet.Head)));
        Wrap(output, "", page.Aside is null ? page.Title : $"{page.Title} ({page.Aside})");
        foreach (var fact in page.Facts)
        {
            Wrap(output, "", fact);
        }

        Wrap(output, "", SheetWords.ViewNote(sheet.Head.View));
        output.Append('-', LineLength).Append('\n').Append(PageLayout.CautionsTitle).Append('\n');
        foreach (var caution in sheet.Cautions)
        {
            Wrap(output, "- ", caution);
        }

        output.Append('=', LineLength).Append('\n');
        foreach (var table in page.Tables)
        {
            output.Append('\n');
            TextTable.Write(output, table);
        }

    }

    /// <summary>A paragraph after a lead, such as the dash of a list.</summary>
    internal static void Wrap(StringBuilder output, string lead, string text)
    {
        foreach (var line in TextTable.Wrap(VisibleText.OfPlain(text), LineLength - lead.Length))
        {
            output.Append(lead).Append(line).Append('\n');
            lead = new string(' ', lead.Length);
        }
    }
}
