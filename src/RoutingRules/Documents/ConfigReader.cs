using RoutingRules.Configuration;
using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;
using RoutingRules.Documents.Upgrading;
using RoutingRules.Engine.Configuration;
using RoutingRules.Reading;

namespace RoutingRules.Documents;

/// <summary>Reads configurations.</summary>
/// <remarks>
/// Never throws for what a document or a file holds: every problem is a finding of <see cref="ReadingRules"/> with pointer, line and column. Thread safe.
/// </remarks>
public static class ConfigReader
{
    // Format version 1 is the first, so nothing needs upgrading yet.
    private static readonly Upgrader[] Upgraders = [];

    /// <summary>Reads a configuration as it stands, without what it extends; <see cref="ConfigLoader"/> loads that too.</summary>
    /// <param name="utf8Json">The document, with or without a byte order mark.</param>
    /// <param name="limits">Bounds; null for <see cref="ReadLimits.Default"/>.</param>
    public static ReadResult<EngineConfig> Read(ReadOnlySpan<byte> utf8Json, ReadLimits? limits = null) => Convert(ReadAsWritten(utf8Json, limits));

    /// <summary>Reads a configuration from a file. A file that is missing, a folder, locked or too large gives <c>RR1001</c> and no configuration.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="limits">Bounds; null for <see cref="ReadLimits.Default"/>.</param>
    public static ReadResult<EngineConfig> ReadFile(string path, ReadLimits? limits = null)
    {
        var file = DocumentFile.Load(path, limits);
        return file.Problem is { } problem ? new ReadResult<EngineConfig> { Findings = [problem] } : Read(file.Utf8.Span, limits);
    }

    internal static ReadResult<ConfigFile> ReadAsWritten(ReadOnlySpan<byte> utf8Json, ReadLimits? limits = null) =>
        DocumentReader.Read(utf8Json, ConfigTable.Config, ShowTable.Version, Upgraders, limits);

    private static ReadResult<EngineConfig> Convert(ReadResult<ConfigFile> read) => new() { Value = read.Value?.ToConfig(), Findings = read.Findings };
}
