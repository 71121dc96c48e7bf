using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace RoutingRules.Cli;

/// <summary>How the tool writes text: UTF-8 without a byte order mark, lines ending with LF.</summary>
internal static class Texts
{
    public static UTF8Encoding Utf8 { get; } = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>How JSON of the tool's own is laid out.</summary>
    public static JsonWriterOptions Json { get; } =
        new()
        {
            Indented = true,
            NewLine = "\n",
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        };

    /// <summary>A writer over a stream that stays open.</summary>
    public static StreamWriter Over(Stream stream) => new(stream, Utf8, leaveOpen: true) { NewLine = "\n" };
}
