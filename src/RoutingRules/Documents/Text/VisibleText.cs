using System.Globalization;
using System.Text;

namespace RoutingRules.Documents.Text;

/// <summary>Writes out characters that paper cannot show or that would break the text around them.</summary>
internal static class VisibleText
{
    /// <summary>
    /// The text with control characters, lone surrogates and noncharacters written as <c>\u0007</c> and the like; these are also what XML cannot hold.
    /// </summary>
    public static string Of(string text) => Replace(text, IsUnprintable);

    /// <summary>The same with line separators and direction marks written out as well, for text that no markup isolates.</summary>
    public static string OfPlain(string text) => Replace(text, static (text, at) => IsUnprintable(text, at) || IsSteering(text[at]));

    private static string Replace(string text, Func<string, int, bool> isHidden)
    {
        StringBuilder? shown = null;
        for (var i = 0; i < text.Length; i++)
        {
            if (isHidden(text, i))
            {
                shown ??= new StringBuilder(text, 0, i, text.Length + 16);
                shown.Append(CultureInfo.InvariantCulture, $"\\u{(int)text[i]:x4}");
            }
            else
            {
                shown?.Append(text[i]);
            }
        }

        return shown?.ToString() ?? text;
    }

    private static bool IsUnprintable(string text, int at) =>
        text[at] switch
        {
            < ' ' or (>= '\u007f' and <= '\u009f') or '\ufffe' or '\uffff' => true,
            >= '\ud800' and <= '\udbff' => at + 1 == text.Length || !char.IsLowSurrogate(text[at + 1]),
            >= '\udc00' and <= '\udfff' => at == 0 || !char.IsHighSurrogate(text[at - 1]),
            _ => false,
        };

    private static bool IsSteering(char c) =>
        c is '\u2028' or '\u2029' or '\u061c' or '\u200e' or '\u200f' or '\ufeff' or (>= '\u202a' and <= '\u202e') or (>= '\u2066' and <= '\u2069');
}
