using System.Text;

namespace RoutingRules.Documents.Text;

/// <summary>Turns positions in bytes into lines and columns, in one pass when they are asked for in rising order.</summary>
internal ref struct LineCounter(ReadOnlySpan<byte> utf8)
{
    private readonly ReadOnlySpan<byte> utf8 = utf8;
    private int line = 1;
    private int lineStart;
    private int seen;

    /// <param name="offset">Not before an offset asked for earlier; beyond the end counts as the end.</param>
    public TextPosition At(long offset)
    {
        var end = (int)Math.Min(offset, utf8.Length);
        while (utf8[seen..end].IndexOfAny((byte)'\n', (byte)'\r') is >= 0 and var found)
        {
            seen += found + 1;
            if (utf8[seen - 1] == '\r' && seen < utf8.Length && utf8[seen] == '\n')
            {
                if (seen == end)
                {
                    seen--;
                    break;
                }

                seen++;
            }

            line++;
            lineStart = seen;
        }

        return new TextPosition(line, 1 + Encoding.UTF8.GetCharCount(utf8[lineStart..Math.Max(end, lineStart)]));
    }
}
