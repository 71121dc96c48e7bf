using System.Text;

namespace RoutingRules.Documents.Text;

/// <summary>Counts lines and columns over a text that comes piece by piece.</summary>
internal sealed class TextPlace
{
    private int line = 1;
    private int column = 1;
    private bool isBehindReturn;

    /// <summary>The place behind everything passed so far.</summary>
    public TextPosition Position => new(line, column);

    /// <param name="utf8">The next piece; pieces are cut between characters.</param>
    public void Pass(ReadOnlySpan<byte> utf8)
    {
        while (!utf8.IsEmpty)
        {
            if (isBehindReturn && utf8[0] == '\n')
            {
                utf8 = utf8[1..];
            }

            isBehindReturn = false;
            var found = utf8.IndexOfAny((byte)'\n', (byte)'\r');
            if (found < 0)
            {
                column += Encoding.UTF8.GetCharCount(utf8);
                return;
            }

            isBehindReturn = utf8[found] == '\r';
            line++;
            column = 1;
            utf8 = utf8[(found + 1)..];
        }
    }
}
