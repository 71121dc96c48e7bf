using System.Text;
using System.Text.Unicode;
using RoutingRules.Documents.Text;

namespace RoutingRules.Reports.Lists;

/// <summary>Makes text of the bytes of a list.</summary>
internal static class ListText
{
    private const string Remedy = "Save the list again as CSV in UTF-8.";

    /// <summary>The text without a byte order mark; null when it cannot be read.</summary>
    public static string? Decode(ReadOnlySpan<byte> bytes, int most, ListProblems problems)
    {
        var text = Utf8Mark.Skip(bytes);
        if (text.Length > most)
        {
            problems.Add(
                null,
                null,
                FormattableString.Invariant($"the list has {text.Length} bytes, more than the limit of {most}"),
                "Check that it is the right file."
            );
        }
        else if (text.Length >= 2 && (text[0] is 0 or 0xFE or 0xFF || text[1] == 0))
        {
            problems.Add(null, null, "the list is UTF-16 or UTF-32 text, or no text at all", Remedy);
        }
        else if (!Utf8.IsValid(text))
        {
            problems.Add(
                new LineCounter(text).At(FirstInvalid(text)).Line,
                null,
                "the list holds bytes that are not UTF-8; it may be Latin-1 or another old encoding",
                Remedy
            );
        }
        else if (text.Contains((byte)0))
        {
            problems.Add(new LineCounter(text).At(text.IndexOf((byte)0)).Line, null, "the list holds a zero character, so it is no text", Remedy);
        }
        else
        {
            return Encoding.UTF8.GetString(text);
        }

        return null;
    }

    private static int FirstInvalid(ReadOnlySpan<byte> text)
    {
        var at = 0;
        while (at < text.Length && Rune.DecodeFromUtf8(text[at..], out _, out var length) == System.Buffers.OperationStatus.Done)
        {
            at += length;
        }

        return at;
    }
}
