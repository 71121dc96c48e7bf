using System.Text;

namespace RoutingRules.Reporting.Sheets;

/// <summary>Texts of documents in Markdown, escaped so that they show as written.</summary>
internal static class MarkdownText
{
    private const string Special = "\\`*_{}[]<>#|~&!+";

    public static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length + 8);
        foreach (var c in VisibleText.OfPlain(text))
        {
            if (Special.Contains(c, StringComparison.Ordinal))
            {
                escaped.Append('\\');
            }

            escaped.Append(c);
        }

        return escaped.ToString();
    }
}
