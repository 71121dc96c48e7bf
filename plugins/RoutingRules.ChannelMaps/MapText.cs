using System.Globalization;
using System.Text.Json;

namespace RoutingRules.ChannelMaps;

/// <summary>How maps are laid out as JSON, and read from it.</summary>
internal static class MapText
{
    public static readonly JsonWriterOptions Layout = new() { Indented = true, NewLine = "\n" };

    /// <summary>Reads a document, with or without a byte order mark.</summary>
    /// <param name="utf8Json">The document.</param>
    /// <param name="maxDepth">Levels it may have.</param>
    /// <param name="problems">Told where it is no JSON.</param>
    /// <param name="read">Reads the root.</param>
    public static void Read(ReadOnlyMemory<byte> utf8Json, int maxDepth, List<string> problems, Action<JsonElement> read)
    {
        try
        {
            using var document = JsonDocument.Parse(
                utf8Json.Span.StartsWith("\uFEFF"u8) ? utf8Json[3..] : utf8Json,
                new JsonDocumentOptions { MaxDepth = maxDepth }
            );
            read(document.RootElement);
        }
        catch (JsonException fault)
        {
            problems.Add(
                string.Create(CultureInfo.InvariantCulture, $"Line {(fault.LineNumber ?? 0) + 1}: this is no sound JSON. Save the map again as UTF-8.")
            );
        }
    }
}
