using System.Text;
using RoutingRules.Documents.Text;

namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>Texts of documents in Markdown, escaped so that they show as written wherever they stand, also at the start of a line.</summary>
/// <remarks>Backslash escapes and character references after CommonMark 0.31.2, sections 2.4 and 2.5 (from memory).</remarks>
internal static class MarkdownText
{
    private const string Special = "\\`*_{}[]<>#|~&!+";

    public static string Escape(string text)
    {
        // Spaces at the ends are not shown, but would make indented code or keep what is strong from being so.
        var shown = VisibleText.OfPlain(text).Trim();
        if (shown.Length == 0)
        {
            return text.Length == 0 ? "" : "&nbsp;";
        }

        var mark = StartMark(shown);
        var escaped = new StringBuilder(shown.Length + 8);
        for (var i = 0; i < shown.Length; i++)
        {
            if (i == mark || Special.Contains(shown[i], StringComparison.Ordinal))
            {
                escaped.Append('\\');
            }

            escaped.Append(shown[i]);
        }

        return escaped.ToString();
    }

    /// <summary>
    /// Where the character stands that makes a list, a rule or a heading of the line: a hyphen, an equals sign, or what follows leading digits; -1 for none.
    /// </summary>
    private static int StartMark(string text)
    {
        var digits = 0;
        while (digits < text.Length && char.IsAsciiDigit(text[digits]))
        {
            digits++;
        }

        return digits == text.Length ? -1
            : digits == 0
                ? text[0] is '-' or '=' ? 0
                    : -1
            : text[digits] is '.' or ')' ? digits
            : -1;
    }
}
