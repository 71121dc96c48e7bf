using System.Text;
using RoutingRules.Documents.Text;

namespace RoutingRules.Fixing;

/// <summary>The one stretch in which two texts differ.</summary>
public sealed record TextChange
{
    /// <summary>Where the old stretch begins.</summary>
    public required TextPosition Start { get; init; }

    /// <summary>The place after its last character; the same as <see cref="Start"/> when text is only put in.</summary>
    public required TextPosition End { get; init; }

    /// <summary>What stands there instead.</summary>
    public required string Text { get; init; }

    /// <summary>The stretch from the first to the last difference, in whole characters.</summary>
    internal static TextChange Between(ReadOnlySpan<byte> old, ReadOnlySpan<byte> now)
    {
        var start = old.CommonPrefixLength(now);
        while (start > 0 && (IsInside(old, start) || IsInside(now, start)))
        {
            start--;
        }

        var tail = 0;
        while (tail < Math.Min(old.Length, now.Length) - start && old[^(tail + 1)] == now[^(tail + 1)])
        {
            tail++;
        }

        while (tail > 0 && (IsInside(old, old.Length - tail) || IsInside(now, now.Length - tail)))
        {
            tail--;
        }

        var mark = Utf8Mark.Length(old);
        var lines = new LineCounter(old[mark..]);
        return new TextChange
        {
            Start = lines.At(start - mark),
            End = lines.At(old.Length - tail - mark),
            Text = Encoding.UTF8.GetString(now[start..^tail]),
        };
    }

    /// <summary>True within the bytes of one character, and between the two of a line break.</summary>
    private static bool IsInside(ReadOnlySpan<byte> text, int at) =>
        at < text.Length && ((text[at] & 0xC0) == 0x80 || (at > 0 && text[at] == '\n' && text[at - 1] == '\r'));
}
