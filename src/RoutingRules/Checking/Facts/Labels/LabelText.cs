using System.Globalization;
using RoutingRules.Resolving;

namespace RoutingRules.Checking.Facts.Labels;

/// <summary>Comparing and cutting label texts. Lengths count what a person sees as one character (Unicode extended grapheme clusters).</summary>
internal static class LabelText
{
    /// <summary>How many characters a person sees.</summary>
    public static int Length(string text) => IsPlain(text) ? text.Length : new StringInfo(text).LengthInTextElements;

    /// <summary>The first characters of a text, as a display of that length shows it.</summary>
    public static string Cut(string text, int length) =>
        Length(text) <= length ? text
        : IsPlain(text) ? text[..length]
        : new StringInfo(text).SubstringByTextElements(0, length);

    /// <summary>The text without spaces, in capitals: what people take for the same label.</summary>
    public static string Normal(string text)
    {
        if (IsNormal(text))
        {
            return text;
        }

        var normal = text.Length <= 128 ? stackalloc char[128] : new char[text.Length];
        var length = 0;
        foreach (var letter in text)
        {
            if (!char.IsWhiteSpace(letter))
            {
                normal[length++] = char.ToUpperInvariant(letter);
            }
        }

        return new string(normal[..length]);
    }

    /// <summary>How many characters a group shows; null when its profile does not say.</summary>
    public static int? Limit(DeviceNode device, GroupNode group) => group.Model.LabelLength ?? device.Profile.Limits?.LabelLength;

    private static bool IsNormal(string text)
    {
        foreach (var letter in text)
        {
            if (letter is <= ' ' or > '~' or (>= 'a' and <= 'z'))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>True when two texts are the same label, capitals and spaces aside.</summary>
    public static bool AreSame(string one, string other) =>
        string.Equals(one, other, StringComparison.Ordinal) || string.Equals(Normal(one), Normal(other), StringComparison.Ordinal);

    private static bool IsPlain(string text)
    {
        foreach (var letter in text)
        {
            if (letter is < ' ' or > '~')
            {
                return false;
            }
        }

        return true;
    }
}
