namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>Keeps texts from becoming formulas when a spreadsheet opens a list.</summary>
/// <remarks>
/// A text that begins with <c>= + - @</c>, their wide forms, a tab, a carriage return or a line feed, or with apostrophes before one of these, gets one
/// apostrophe more in front; <see cref="Restore"/> takes it away again. Both are exact: any text comes back as it was. The characters are those of the
/// OWASP page on CSV injection (from memory). Thread safe.
/// </remarks>
public static class FormulaGuard
{
    private const string Starts = "=+-@\t\r\n\uff1d\uff0b\uff0d\uff20";
    private const char Guard = '\'';

    /// <summary>The text as a list carries it.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public static string Neutralise(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return IsDangerous(text.AsSpan().TrimStart(Guard)) ? Guard + text : text;
    }

    /// <summary>The text as it was before <see cref="Neutralise"/>; any other text as it is.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public static string Restore(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.StartsWith(Guard) && IsDangerous(text.AsSpan().TrimStart(Guard)) ? text[1..] : text;
    }

    private static bool IsDangerous(ReadOnlySpan<char> text) => text.Length > 0 && Starts.Contains(text[0], StringComparison.Ordinal);
}
