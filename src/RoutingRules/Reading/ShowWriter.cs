using System.Buffers;
using RoutingRules.Model;
using RoutingRules.Reading.Documents;

namespace RoutingRules.Reading;

/// <summary>Writes shows.</summary>
/// <remarks>
/// Indented UTF-8 without a byte order mark, LF, a line break at the end; members in a fixed order, those that say what their absence means left out.
/// Reading what was written gives an equal show. Thread safe.
/// </remarks>
public static class ShowWriter
{
    /// <summary>Writes a show.</summary>
    /// <exception cref="ArgumentException">An <c>extensions</c> member of the show is not a JSON object.</exception>
    public static void Write(Show show, IBufferWriter<byte> output) => DocumentWriter.Write(show, ShowTable.Show, output);

    /// <summary>A show as bytes.</summary>
    /// <exception cref="ArgumentException">An <c>extensions</c> member of the show is not a JSON object.</exception>
    public static byte[] ToUtf8(Show show) => DocumentWriter.ToUtf8(show, ShowTable.Show);
}
