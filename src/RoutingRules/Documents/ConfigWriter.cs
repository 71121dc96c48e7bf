using System.Buffers;
using RoutingRules.Configuration;
using RoutingRules.Documents.Formats;

namespace RoutingRules.Documents;

/// <summary>Writes configurations.</summary>
/// <remarks>
/// Indented UTF-8 without a byte order mark, LF, a line break at the end; members in a fixed order, those that say what their absence means left out.
/// Reading what was written gives an equal configuration. Thread safe.
/// </remarks>
public static class ConfigWriter
{
    /// <summary>Writes a configuration.</summary>
    /// <exception cref="ArgumentException">An <c>extensions</c> member of the configuration is not a JSON object.</exception>
    public static void Write(EngineConfig config, IBufferWriter<byte> output) => DocumentWriter.Write(FileOf(config), ConfigTable.Config, output);

    /// <summary>A configuration as bytes.</summary>
    /// <exception cref="ArgumentException">An <c>extensions</c> member of the configuration is not a JSON object.</exception>
    public static byte[] ToUtf8(EngineConfig config) => DocumentWriter.ToUtf8(FileOf(config), ConfigTable.Config);

    private static ConfigFile FileOf(EngineConfig config)
    {
        ArgumentNullException.ThrowIfNull(config);
        return ConfigFile.Of(config);
    }
}
