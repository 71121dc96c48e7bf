using System.Globalization;
using System.Text;

namespace RoutingRules.Reports.Sheets.Flow;

/// <summary>Guesses how wide text is in a sans-serif face, on the wide side, and shortens it.</summary>
internal static class FlowText
{
    private const string Narrow = "iljtfrI.,:;'|!()[]/ -";
    private const string Wide = "mwMW@%";

    /// <summary>The width of a text in the unit of the size.</summary>
    public static double Width(string text, double size, bool isBold)
    {
        var sum = 0.0;
        foreach (var rune in text.EnumerateRunes())
        {
            sum += Width(rune);
        }

        return sum * size * (isBold ? 1.08 : 1);
    }

    /// <summary>The text, or as much of it as fits with an ellipsis; empty where not even one character fits.</summary>
    public static string Fit(string text, double width, double size, bool isBold)
    {
        if (Width(text, size, isBold) <= width)
        {
            return text;
        }

        var fitting = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            if (Width($"{fitting}{rune}\u2026", size, isBold) > width)
            {
                break;
            }

            fitting.Append(rune.ToString());
        }

        return fitting.Length == 0 ? "" : $"{fitting.ToString().TrimEnd()}\u2026";
    }

    /// <summary>
    /// The text in lines that fit, at most so many, broken between words where that can be; the last one is cut if need be. None for an empty text.
    /// </summary>
    public static List<string> Wrap(string text, double width, double size, int most)
    {
        var lines = new List<string>();
        var rest = text.Trim();
        while (rest.Length > 0)
        {
            var end = lines.Count == most - 1 ? 0 : End(rest, width, size);
            lines.Add(end == 0 ? Fit(rest, width, size, false) : rest[..end].TrimEnd());
            rest = end == 0 ? "" : rest[end..].TrimStart();
        }

        lines.RemoveAll(static line => line.Length == 0);
        return lines;
    }

    /// <summary>Where a first line ends: after the last word that fits; 0 when not even one does.</summary>
    private static int End(string text, double width, double size)
    {
        var end = 0;
        for (var space = text.IndexOf(' ', StringComparison.Ordinal); ; space = text.IndexOf(' ', space + 1))
        {
            var next = space < 0 ? text.Length : space;
            if (Width(text[..next], size, false) > width)
            {
                return end;
            }

            end = next;
            if (space < 0)
            {
                return end;
            }
        }
    }

    private static double Width(Rune rune)
    {
        if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format)
        {
            return 0;
        }

        if (!rune.IsAscii)
        {
            return rune.Value >= 0x1100 ? 1.05 : 0.72;
        }

        var c = (char)rune.Value;
        return Narrow.Contains(c, StringComparison.Ordinal) ? 0.34
            : Wide.Contains(c, StringComparison.Ordinal) ? 0.9
            : char.IsAsciiLetterUpper(c) ? 0.7
            : 0.57;
    }
}
