using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;
using RoutingRules.Documents.Upgrading;
using RoutingRules.Model;
using RoutingRules.Reading;

namespace RoutingRules.Documents;

/// <summary>Reads running orders.</summary>
/// <remarks>
/// Never throws for what a document holds: every problem is a finding of <see cref="ReadingRules"/> with pointer, line and column. Thread safe.
/// </remarks>
public static class RunningOrderReader
{
    // Format version 1 is the first, so nothing needs upgrading yet.
    private static readonly Upgrader[] Upgraders = [];

    /// <summary>Reads running orders.</summary>
    /// <param name="utf8Json">The document, with or without a byte order mark.</param>
    /// <param name="limits">Bounds; null for <see cref="ReadLimits.Default"/>.</param>
    public static ReadResult<RunningOrder> Read(ReadOnlySpan<byte> utf8Json, ReadLimits? limits = null) =>
        DocumentReader.Read(utf8Json, RunningOrderTable.Run, ShowTable.Version, Upgraders, limits);
}
