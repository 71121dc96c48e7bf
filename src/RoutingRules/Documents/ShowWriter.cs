using System.Buffers;
using RoutingRules.Documents.Formats;
using RoutingRules.Model;

namespace RoutingRules.Documents;

/// <summary>Writes shows.</summary>
/// <remarks>
/// Indented UTF-8 without a byte order mark, LF, a line break at the end; members in a fixed order, those that say what their absence means left out.
/// Reading what was written gives an equal show. Thread safe.
/// </remarks>
public static class ShowWriter
{
    /// <summary>Writes a show.</summary>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">A member of the show holds what a reader would refuse; the message gives its JSON Pointer.</exception>
    public static void Write(Show show, IBufferWriter<byte> output)
    {
        Writable.Demand(show, nameof(show), toWrite: true);
        DocumentWriter.WriteChecked(show, ShowTable.Show, output);
    }

    /// <summary>A show as bytes.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    /// <exception cref="ArgumentException">A member of the show holds what a reader would refuse; the message gives its JSON Pointer.</exception>
    public static byte[] ToUtf8(Show show)
    {
        var buffer = new ArrayBufferWriter<byte>();
        Write(show, buffer);
        return buffer.WrittenSpan.ToArray();
    }

    /// <summary>The text of a show for comparing and counting inside the engine, without a look at whether a reader would take it.</summary>
    internal static byte[] Text(Show show)
    {
        var buffer = new ArrayBufferWriter<byte>();
        DocumentWriter.WriteChecked(show, ShowTable.Show, buffer);
        return buffer.WrittenSpan.ToArray();
    }
}
