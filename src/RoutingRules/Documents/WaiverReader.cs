using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;
using RoutingRules.Documents.Upgrading;
using RoutingRules.Reading;
using RoutingRules.Waivers;

namespace RoutingRules.Documents;

/// <summary>Reads lists of waivers.</summary>
/// <remarks>
/// Never throws for what a document holds: every problem is a finding of <see cref="ReadingRules"/> with pointer, line and column. Thread safe.
/// </remarks>
public static class WaiverReader
{
    // Format version 1 is the first, so nothing needs upgrading yet.
    private static readonly Upgrader[] Upgraders = [];

    /// <summary>Reads lists of waivers.</summary>
    /// <param name="utf8Json">The document, with or without a byte order mark.</param>
    /// <param name="limits">Bounds; null for <see cref="ReadLimits.Default"/>.</param>
    public static ReadResult<WaiverList> Read(ReadOnlySpan<byte> utf8Json, ReadLimits? limits = null) =>
        DocumentReader.Read(utf8Json, WaiverTables.Waivers, ShowTable.Version, Upgraders, limits);
}
