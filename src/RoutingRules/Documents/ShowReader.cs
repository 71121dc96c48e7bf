using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;
using RoutingRules.Documents.Upgrading;
using RoutingRules.Model;
using RoutingRules.Reading;

namespace RoutingRules.Documents;

/// <summary>Reads shows.</summary>
/// <remarks>
/// Never throws for what a document or a file holds: every problem is a finding of <see cref="ReadingRules"/> with pointer, line and column. Thread safe.
/// </remarks>
public static class ShowReader
{
    /// <summary>Reads a show.</summary>
    /// <param name="utf8Json">The document, with or without a byte order mark.</param>
    /// <param name="limits">Bounds; null for <see cref="ReadLimits.Default"/>.</param>
    public static ReadResult<Show> Read(ReadOnlySpan<byte> utf8Json, ReadLimits? limits = null)
    {
        var result = DocumentReader.Read(utf8Json, ShowTable.Show, ShowTable.Version, DocumentUpgrade.UpgradersOf(SchemaKind.Show), limits);
        result.Value?.Admit(result.IsUsable);
        return result;
    }

    /// <summary>Reads a show from a file. A file that is missing, a folder, locked or too large gives <c>RR1001</c> and no show.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="limits">Bounds; null for <see cref="ReadLimits.Default"/>.</param>
    public static ReadResult<Show> ReadFile(string path, ReadLimits? limits = null)
    {
        var file = DocumentFile.Load(path, limits);
        return file.Problem is { } problem ? new ReadResult<Show> { Findings = [problem] } : Read(file.Utf8.Span, limits);
    }

    /// <summary>Reads with upgraders of the caller's choice.</summary>
    internal static ReadResult<Show> Read(ReadOnlySpan<byte> utf8Json, ReadOnlySpan<Upgrader> upgraders) =>
        DocumentReader.Read(utf8Json, ShowTable.Show, ShowTable.Version, upgraders, null);
}
