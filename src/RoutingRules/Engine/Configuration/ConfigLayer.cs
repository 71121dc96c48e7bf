using RoutingRules.Documents.Formats;

namespace RoutingRules.Engine.Configuration;

/// <summary>One file of a configuration.</summary>
/// <param name="Path">Where it was read from.</param>
/// <param name="Utf8">Its text.</param>
/// <param name="File">What it says.</param>
internal sealed record ConfigLayer(string Path, ReadOnlyMemory<byte> Utf8, ConfigFile File);
