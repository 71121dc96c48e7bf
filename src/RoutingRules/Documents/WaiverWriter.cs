using RoutingRules.Documents.Formats;
using RoutingRules.Waivers;

namespace RoutingRules.Documents;

/// <summary>Writes lists of waivers.</summary>
/// <remarks>
/// Indented UTF-8 without a byte order mark, LF, a line break at the end; members in a fixed order. Reading what was written gives an equal value. Thread safe.
/// </remarks>
public static class WaiverWriter
{
    /// <summary>The document as bytes.</summary>
    /// <exception cref="ArgumentNullException">The argument is null.</exception>
    /// <exception cref="ArgumentException">An <c>extensions</c> member is not a JSON object.</exception>
    public static byte[] ToUtf8(WaiverList document) => DocumentWriter.ToUtf8(document, WaiverTables.Waivers);
}
