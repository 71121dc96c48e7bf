using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;
using RoutingRules.Profiles;
using RoutingRules.Reading;

namespace RoutingRules.Documents;

/// <summary>Reads device profiles that stand alone.</summary>
/// <remarks>
/// Never throws for what a document or a file holds: every problem is a finding of <see cref="ReadingRules"/> with pointer, line and column. Thread safe.
/// </remarks>
public static class ProfileReader
{
    /// <summary>Reads a profile.</summary>
    /// <param name="utf8Json">The document, with or without a byte order mark.</param>
    /// <param name="limits">Bounds; null for <see cref="ReadLimits.Default"/>.</param>
    public static ReadResult<DeviceProfile> Read(ReadOnlySpan<byte> utf8Json, ReadLimits? limits = null) =>
        DocumentReader.Read(utf8Json, ProfileTables.Profile, ShowTable.Version, [], limits);

    /// <summary>Reads a profile from a file. A file that is missing, a folder, locked or too large gives <c>RR1001</c> and no profile.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="limits">Bounds; null for <see cref="ReadLimits.Default"/>.</param>
    public static ReadResult<DeviceProfile> ReadFile(string path, ReadLimits? limits = null)
    {
        var file = DocumentFile.Load(path, limits);
        return file.Problem is { } problem ? new ReadResult<DeviceProfile> { Findings = [problem] } : Read(file.Utf8.Span, limits);
    }
}
