using System.Text;

namespace RoutingRules.Cli;

/// <summary>How the tool writes text: UTF-8 without a byte order mark, lines ending with LF.</summary>
internal static class Texts
{
    public static UTF8Encoding Utf8 { get; } = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>A writer over a stream that stays open.</summary>
    public static StreamWriter Over(Stream stream) => new(stream, Utf8, leaveOpen: true) { NewLine = "\n" };
}
