using System.Text.Json;
using RoutingRules.Documents.Tables;
using RoutingRules.Documents.Text;
using RoutingRules.Rules;

namespace RoutingRules.Documents.Archives;

/// <summary>Cuts a stream of JSON values, one after the other with blanks between them, into documents. Keeps one of them in memory.</summary>
/// <remarks>
/// A value ends where its grammar says, however many lines it takes. One that breaks the grammar, or is not finished at the end of the stream, ends before
/// the next line that begins with a brace: documents written one a line go on there, and the rest of one that is indented stays with it.
/// </remarks>
internal sealed class JsonSplitter(Stream stream, ReadLimits limits)
{
    private const int FirstBuffer = 64 * 1024;
    private const int MaxDepth = 1024;

    private readonly TextPlace place = new();
    private byte[] buffer = new byte[(int)Math.Min(FirstBuffer, limits.Bytes + 1)];
    private int start;
    private int end;
    private long skipped;
    private bool hasBegun;
    private bool isEnd;
    private bool isStopped;

    /// <summary>Where the document that comes next begins. Waits for it.</summary>
    /// <returns>False at the end of the stream.</returns>
    /// <exception cref="IOException">Reading failed.</exception>
    public bool Find(out TextPosition at)
    {
        if (!hasBegun)
        {
            Begin();
        }

        while (!isStopped)
        {
            var blank = end - start - buffer.AsSpan(start, end - start).TrimStart(" \t\r\n"u8).Length;
            place.Pass(buffer.AsSpan(start, blank));
            start += blank;
            skipped += blank;
            if (start < end || IsTooLong || !Fill(1))
            {
                break;
            }
        }

        at = place.Position;
        return !isStopped && (start < end || IsTooLong);
    }

    /// <summary>The document that <see cref="Find"/> found, or why it cannot be had; then nothing else follows.</summary>
    /// <exception cref="IOException">Reading failed.</exception>
    public byte[] Take(out Finding? problem)
    {
        var length =
            start == end ? -1
            : IsOtherEncoding ? All()
            : EndOfValue();
        if (length < 0 || length > limits.Bytes)
        {
            isStopped = true;
            var tooLarge = DocumentReader.TooLarge(null, limits);
            problem = tooLarge with { Message = $"{tooLarge.Message} What follows was not read." };
            return [];
        }

        problem = null;
        var document = buffer.AsSpan(start, length).ToArray();
        place.Pass(document);
        start += length;
        skipped = 0;
        return document;
    }

    /// <summary>Nothing more comes.</summary>
    public void Stop() => isStopped = true;

    /// <summary>True when no more may be fetched for the document that begins here; what is there may still hold its end.</summary>
    private bool IsTooLong => end - start + skipped > limits.Bytes;

    /// <summary>UTF-16 and UTF-32 have no lines to go by; the reader says what is wrong with the whole.</summary>
    private bool IsOtherEncoding => buffer[start] is 0 or 0xFE or 0xFF || (end - start > 1 && buffer[start + 1] == 0);

    private void Begin()
    {
        hasBegun = true;
        while (end < Utf8Mark.Bytes.Length && Fill(1)) { }

        start = Utf8Mark.Length(buffer.AsSpan(0, end));
    }

    private int All()
    {
        while (!IsTooLong && Fill(1)) { }

        return IsTooLong ? -1 : end - start;
    }

    private int EndOfValue()
    {
        var state = new JsonReaderState(new JsonReaderOptions { MaxDepth = MaxDepth });
        var parsed = 0;
        while (true)
        {
            var json = new Utf8JsonReader(buffer.AsSpan(start + parsed, end - start - parsed), isEnd, state);
            try
            {
                while (json.Read())
                {
                    if (json.CurrentDepth == 0 && json.TokenType is not (JsonTokenType.StartObject or JsonTokenType.StartArray))
                    {
                        return parsed + (int)json.BytesConsumed;
                    }
                }
            }
            catch (JsonException)
            {
                return EndOfBroken();
            }

            parsed += (int)json.BytesConsumed;
            state = json.CurrentState;
            if (isEnd)
            {
                return EndOfBroken();
            }

            // A long text is read again from its beginning each time, so each time there must be much more of it.
            if (IsTooLong || (!Fill(Math.Max(1, end - start - parsed)) && IsTooLong))
            {
                return -1;
            }
        }
    }

    private int EndOfBroken()
    {
        for (var seen = 0; ; )
        {
            var found = buffer.AsSpan(start + seen, end - start - seen).IndexOfAny((byte)'\n', (byte)'\r');
            seen = found < 0 ? end - start : seen + found + 1;
            while (seen == end - start)
            {
                if (IsTooLong)
                {
                    return -1;
                }

                if (!Fill(1))
                {
                    return end - start;
                }
            }

            if (buffer[start + seen] == '{' && found >= 0)
            {
                return seen;
            }
        }
    }

    /// <summary>Fetches at least so many bytes more, as far as the stream and the limit go.</summary>
    /// <returns>False when there was nothing more.</returns>
    private bool Fill(int atLeast)
    {
        var fetched = 0;
        while (fetched < atLeast && !isEnd && !IsTooLong)
        {
            if (end == buffer.Length)
            {
                MakeRoom();
            }

            var count = (int)Math.Min(buffer.Length - end, limits.Bytes + 1 - skipped - (end - start));
            var read = stream.Read(buffer, end, count);
            isEnd = read == 0;
            end += read;
            fetched += read;
        }

        return fetched > 0;
    }

    private void MakeRoom()
    {
        var held = end - start;
        var target = held > buffer.Length / 2 ? new byte[(int)Math.Min(2L * buffer.Length, Math.Max(limits.Bytes + 1, held + 1L))] : buffer;
        Buffer.BlockCopy(buffer, start, target, 0, held);
        (buffer, start, end) = (target, 0, held);
    }
}
