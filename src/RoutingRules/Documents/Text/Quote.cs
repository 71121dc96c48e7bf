using System.Globalization;
using System.Text;

namespace RoutingRules.Documents.Text;

/// <summary>Texts from documents as messages show them: short, on one line, control characters by their code.</summary>
internal static class Quote
{
    private const int MaxLength = 60;

    /// <summary>In quotation marks.</summary>
    public static string Text(ReadOnlySpan<byte> utf8) => $"\"{Plain(utf8)}\"";

    /// <summary>Without quotation marks.</summary>
    public static string Plain(ReadOnlySpan<byte> utf8)
    {
        var shown = new StringBuilder();
        while (!utf8.IsEmpty)
        {
            if (shown.Length >= MaxLength)
            {
                return shown.Append('…').ToString();
            }

            Rune.DecodeFromUtf8(utf8, out var rune, out var length);
            shown.Append(Rune.IsControl(rune) ? Code(rune) : rune.ToString());
            utf8 = utf8[length..];
        }

        return shown.ToString();
    }

    /// <summary>One character: itself in quotation marks, or its code when it cannot be seen.</summary>
    public static string Character(Rune rune) =>
        rune.Value switch
        {
            ' ' => "a space",
            _ when Rune.IsControl(rune) || Rune.IsWhiteSpace(rune) => $"the character {Code(rune)}",
            _ => $"'{rune}'",
        };

    private static string Code(Rune rune) => $"U+{rune.Value.ToString("X4", CultureInfo.InvariantCulture)}";
}
