using System.Text;
using System.Text.Json;

namespace RoutingRules.Documents.Text;

/// <summary>Why a text stopped being JSON, in plain words, and where.</summary>
/// <param name="Offset">Position in bytes.</param>
/// <param name="Message">What is wrong there.</param>
internal readonly record struct JsonFault(int Offset, string Message)
{
    /// <param name="utf8">The text.</param>
    /// <param name="read">How many bytes had been read as whole tokens.</param>
    /// <param name="ended">Whether the document was complete by then.</param>
    /// <param name="fault">What the parser said.</param>
    public static JsonFault Find(ReadOnlySpan<byte> utf8, long read, bool ended, JsonException fault)
    {
        var offset = OffsetOf(utf8, fault);
        if (ended)
        {
            return new JsonFault(offset, "something follows behind the end of the document; only one object may stand in a file");
        }

        var token = (int)Math.Min(read, offset);
        while (token < offset && utf8[token] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n' or (byte)',' or (byte)':')
        {
            token++;
        }

        // A text cut off behind a comma or colon is faulted at that comma or colon.
        if (utf8[offset..].Trim(" \t\r\n,:"u8).IsEmpty)
        {
            return new JsonFault(
                offset,
                "the text ends before the document does: a bracket, a brace or a quotation mark is still open; the file may be cut off"
            );
        }

        return token < offset ? InToken(utf8, token, offset) : new JsonFault(offset, AtToken(utf8[..offset].TrimEnd(" \t\r\n"u8), utf8[offset..]));
    }

    private static int OffsetOf(ReadOnlySpan<byte> utf8, JsonException fault)
    {
        var start = 0;
        for (var line = 0L; line < (fault.LineNumber ?? 0); line++)
        {
            start += utf8[start..].IndexOf((byte)'\n') + 1;
        }

        return (int)Math.Min(utf8.Length, start + (fault.BytePositionInLine ?? 0));
    }

    /// <summary>A text, number or word that began well at <paramref name="token"/> and went wrong later.</summary>
    private static JsonFault InToken(ReadOnlySpan<byte> utf8, int token, int offset) =>
        utf8[token] switch
        {
            (byte)'"' when utf8[offset] < 0x20 => new(
                offset,
                "a text holds a line break, a tab or another control character; write \\n or \\t, or close the quotation mark"
            ),
            (byte)'"' => new(offset, "a backslash in a text begins no known escape; write \\\\ for the backslash itself"),
            (byte)'-' or (>= (byte)'0' and <= (byte)'9') => new(token, "a number is written wrongly; write it like 48000, -3 or 0.5"),
            _ => new(token, AtToken([], utf8[token..])),
        };

    private static string AtToken(ReadOnlySpan<byte> before, ReadOnlySpan<byte> rest)
    {
        var last = before.IsEmpty ? (byte)0 : before[^1];
        return rest[0] switch
        {
            (byte)'}' or (byte)']' when last == ',' => $"a comma stands before the closing {(char)rest[0]}; take it away",
            (byte)'}' or (byte)']' when last == ':' => "a value is missing after the colon",
            (byte)'}' or (byte)']' => $"{(char)rest[0]} closes what is not open",
            (byte)'/' or (byte)'#' => "comments are not allowed in JSON; put the remark into a \"notes\" member",
            (byte)'\'' => "names and texts stand in double quotation marks, not in single ones",
            (byte)'"' or (byte)'{' or (byte)'[' when last is not ((byte)',' or (byte)'{' or (byte)'[') => "a comma or a colon is missing before this",
            _ when char.IsAsciiLetter((char)rest[0]) => "a word stands without quotation marks; only true, false and null do",
            _ => $"{Character(rest)} does not belong here",
        };
    }

    private static string Character(ReadOnlySpan<byte> rest)
    {
        Rune.DecodeFromUtf8(rest, out var rune, out _);
        return Quote.Character(rune);
    }
}
