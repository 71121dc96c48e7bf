namespace RoutingRules.Documents.Text;

/// <summary>The byte order mark that a text in UTF-8 may begin with.</summary>
internal static class Utf8Mark
{
    public static ReadOnlySpan<byte> Bytes => [0xEF, 0xBB, 0xBF];

    /// <summary>The text without the mark.</summary>
    public static ReadOnlySpan<byte> Skip(ReadOnlySpan<byte> text) => text[Length(text)..];

    /// <summary>How many bytes of the text are the mark: all of them or none.</summary>
    public static int Length(ReadOnlySpan<byte> text) => text.StartsWith(Bytes) ? Bytes.Length : 0;
}
