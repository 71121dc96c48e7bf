namespace RoutingRules.Reporting.Sheets;

/// <summary>Texts of documents in HTML that is also well-formed XML.</summary>
internal static class HtmlText
{
    /// <summary>Names may be of any script and direction; they must not turn the words beside them.</summary>
    public static string Isolate(string text) => $"<bdi>{Escape(text)}</bdi>";

    public static string Escape(string text) => VisibleText.Of(text)
        .Replace("&", "&amp;", StringComparison.Ordinal)
        .Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal)
        .Replace("\"", "&quot;", StringComparison.Ordinal)
        .Replace("'", "&#39;", StringComparison.Ordinal);
}
