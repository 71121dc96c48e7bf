using System.Buffers;
using System.Text;
using System.Text.Json;

namespace RoutingRules.Schema;

/// <summary>Reads JSON as strictly as the format does, and makes of it what NJsonSchema can look at.</summary>
/// <remarks>
/// NJsonSchema's own parser takes comments, single quotes, trailing commas and members written twice, so that the text must pass a strict one first; and it has
/// no whole numbers beyond 64 bits, which therefore get an exponent, so that they are compared as what they are worth.
/// </remarks>
internal static class StrictText
{
    /// <summary>The text for NJsonSchema.</summary>
    /// <exception cref="JsonException">It is not sound JSON, or a member is written twice.</exception>
    public static string Of(ReadOnlySpan<byte> utf8Json, int maxDepth)
    {
        var json = new Utf8JsonReader(utf8Json, new JsonReaderOptions { MaxDepth = maxDepth });
        var names = new Stack<HashSet<string>>();
        var text = new ArrayBufferWriter<byte>();
        var done = 0;
        while (json.Read())
        {
            if (json.TokenType == JsonTokenType.StartObject)
            {
                names.Push(new HashSet<string>(StringComparer.Ordinal));
            }
            else if (json.TokenType == JsonTokenType.EndObject)
            {
                names.Pop();
            }
            else if (json.TokenType == JsonTokenType.PropertyName && !names.Peek().Add(Name(ref json)))
            {
                throw new JsonException($"The member '{Name(ref json)}' is written twice.");
            }
            else if (json.TokenType == JsonTokenType.Number && json.ValueSpan.IndexOfAny("."u8[0], "e"u8[0], "E"u8[0]) < 0 && !json.TryGetInt64(out _))
            {
                var end = (int)json.TokenStartIndex + json.ValueSpan.Length;
                text.Write(utf8Json[done..end]);
                text.Write("e0"u8);
                done = end;
            }
        }

        text.Write(utf8Json[done..]);
        return Encoding.UTF8.GetString(text.WrittenSpan);
    }

    /// <summary>A name; one with half of a surrogate pair as it is written.</summary>
    private static string Name(ref Utf8JsonReader json)
    {
        try
        {
            return json.GetString()!;
        }
        catch (InvalidOperationException)
        {
            return Encoding.UTF8.GetString(json.ValueSpan);
        }
    }
}
