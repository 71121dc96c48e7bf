using System.Text;
using System.Text.Json;
using RoutingRules.Reading.Tables;

namespace RoutingRules.Reading;

/// <summary>Says in plain words why a text stopped being JSON.</summary>
internal static class JsonFault
{
    /// <summary>The position of the fault in bytes.</summary>
    public static int Offset(ReadOnlySpan<byte> utf8, JsonException fault)
    {
        var start = 0;
        for (var line = 0L; line < (fault.LineNumber ?? 0); line++)
        {
            var end = utf8[start..].IndexOf((byte)'\n');
            if (end < 0)
            {
                break;
            }

            start += end + 1;
        }

        return (int)Math.Min(utf8.Length, start + (fault.BytePositionInLine ?? 0));
    }

    /// <summary>What is wrong at the position.</summary>
    public static string Explain(ReadOnlySpan<byte> utf8, int offset)
    {
        var before = utf8[..offset].TrimEnd(" \t\r\n"u8);
        var rest = utf8[offset..];
        if (rest.Trim(" \t\r\n"u8).IsEmpty)
        {
            return "the text ends before the document does: a bracket, a brace or a quotation mark is still open; the file may be cut off";
        }

        var last = before.IsEmpty ? (byte)0 : before[^1];
        return rest[0] switch
        {
            (byte)'}' or (byte)']' when last == ',' => $"a comma stands before the closing {(char)rest[0]}; take it away",
            (byte)'}' or (byte)']' when last == ':' => "a value is missing after the colon",
            (byte)'}' or (byte)']' => $"{(char)rest[0]} closes what is not open",
            (byte)'/' or (byte)'#' => "comments are not allowed in JSON; put the remark into a \"notes\" member",
            (byte)'\'' => "names and texts stand in double quotation marks, not in single ones",
            (byte)'"' when last is (byte)'"' or (byte)'}' or (byte)']' or (>= (byte)'0' and <= (byte)'9') or (>= (byte)'a' and <= (byte)'z') => "a comma or a colon is missing before this",
            (byte)'{' or (byte)'[' when last is (byte)'}' or (byte)']' or (byte)'"' => "a comma or a colon is missing before this",
            < 0x20 => "a text holds a line break, a tab or another control character; write \\n or \\t, or close the quotation mark",
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
