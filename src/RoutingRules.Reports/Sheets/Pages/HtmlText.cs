using System.Text.RegularExpressions;
using RoutingRules.Documents.Text;

namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>Texts of documents in HTML that is also well-formed XML.</summary>
internal static partial class HtmlText
{
    /// <summary>Names may be of any script and direction; they must not turn the words beside them.</summary>
    public static string Isolate(string text) => $"<bdi>{Escape(text)}</bdi>";

    /// <summary>The same for running text: a run of numbers such as 5-8 stays on one line, where half of it would be read as something else.</summary>
    public static string Line(string text) => Run().Replace(Isolate(text), "<span class=\"run\">$0</span>");

    public static string Escape(string text) =>
        VisibleText
            .Of(text)
            .Replace("&", "&amp;", StringComparison.Ordinal)
            .Replace("<", "&lt;", StringComparison.Ordinal)
            .Replace(">", "&gt;", StringComparison.Ordinal)
            .Replace("\"", "&quot;", StringComparison.Ordinal)
            .Replace("'", "&#39;", StringComparison.Ordinal);

    // Neither part of a date nor of an id; what stands between & and ; is an escape and holds no hyphen.
    [GeneratedRegex("(?<![\\w-])([0-9]{1,5}|[A-Z])-([0-9]{1,5}|[A-Z])(?![\\w-])", RegexOptions.CultureInvariant)]
    private static partial Regex Run();
}
