using System.Globalization;
using System.Text;
using System.Text.Json;

namespace RoutingRules.Documents.Upgrading;

/// <summary>Brings shows from format version 0 to 1.</summary>
/// <remarks>
/// Version 0 is made up: no release ever wrote it. It shows how an upgrader is written and keeps the way for older documents under test. It differs from
/// version 1 in the names of seven members and in the values of one:
/// <list type="table">
/// <item><term><c>/name</c></term><description><c>/title</c></description></item>
/// <item><term><c>/mixes</c></term><description><c>/feeds</c></description></item>
/// <item><term><c>/sources</c></term><description><c>/lines</c></description></item>
/// <item><term><c>/rig/units</c></term><description><c>/rig/devices</c></description></item>
/// <item><term><c>/rig/units/*/type</c></term><description><c>/rig/devices/*/profile</c></description></item>
/// <item><term><c>/mixes/*/bus</c></term><description><c>/feeds/*/source</c></description></item>
/// <item><term><c>/mixes/*/protected</c>, true or false</term><description><c>/feeds/*/priority</c>, critical or normal</description></item>
/// </list>
/// </remarks>
internal sealed class ShowVersionZero : Upgrader
{
    private const int MaxDepth = 1024;

    private static readonly Dictionary<string, string> Names = new(StringComparer.Ordinal)
    {
        ["/name"] = "title",
        ["/mixes"] = "feeds",
        ["/sources"] = "lines",
        ["/rig/units"] = "devices",
        ["/rig/units/*/type"] = "profile",
        ["/mixes/*/bus"] = "source",
        ["/mixes/*/protected"] = "priority",
    };

    public override int From => 0;

    public override byte[] Upgrade(ReadOnlySpan<byte> utf8, ICollection<string> changes)
    {
        var edits = new List<(int Start, int Length, string Text)>();
        var counts = new Dictionary<string, int>(StringComparer.Ordinal);
        Find(utf8, edits, counts);
        foreach (var (path, count) in counts)
        {
            changes.Add(string.Create(CultureInfo.InvariantCulture, $"{path} is now {Names[path]}{(count == 1 ? "" : $" ({count} times)")}"));
        }

        return Apply(utf8, edits);
    }

    private static void Find(ReadOnlySpan<byte> utf8, List<(int Start, int Length, string Text)> edits, Dictionary<string, int> counts)
    {
        var json = new Utf8JsonReader(utf8, new JsonReaderOptions { MaxDepth = MaxDepth });
        var paths = new Stack<string>();
        var path = "";
        try
        {
            while (json.Read())
            {
                var start = (int)json.TokenStartIndex;
                switch (json.TokenType)
                {
                    case JsonTokenType.PropertyName:
                        path = $"{paths.Peek()}/{json.GetString()}";
                        if (Names.TryGetValue(path, out var name))
                        {
                            edits.Add((start, json.ValueSpan.Length + 2, $"\"{name}\""));
                            counts[path] = counts.GetValueOrDefault(path) + 1;
                        }

                        break;
                    case JsonTokenType.StartObject:
                        paths.Push(path);
                        break;
                    case JsonTokenType.StartArray:
                        paths.Push(path);
                        path += "/*";
                        break;
                    case JsonTokenType.EndObject or JsonTokenType.EndArray:
                        path = paths.Pop();
                        break;
                    case JsonTokenType.Number when path == "/schemaVersion":
                        edits.Add((start, json.ValueSpan.Length, "1"));
                        break;
                    case JsonTokenType.True or JsonTokenType.False when path == "/mixes/*/protected":
                        edits.Add((start, json.ValueSpan.Length, json.TokenType == JsonTokenType.True ? "\"critical\"" : "\"normal\""));
                        break;
                    default:
                        break;
                }
            }
        }
        catch (JsonException)
        {
            // The reader says what is wrong with the text.
        }
    }

    private static byte[] Apply(ReadOnlySpan<byte> utf8, List<(int Start, int Length, string Text)> edits)
    {
        using var output = new MemoryStream(utf8.Length + 64);
        var done = 0;
        foreach (var (start, length, text) in edits)
        {
            output.Write(utf8[done..start]);
            output.Write(Encoding.UTF8.GetBytes(text));
            done = start + length;
        }

        output.Write(utf8[done..]);
        return output.ToArray();
    }
}
