using RoutingRules.Documents.Formats;

namespace RoutingRules.Cli.Input;

/// <summary>Tells kinds of documents by words and by names of files.</summary>
internal static class UpgradeKinds
{
    /// <summary>The kind of a word; null when it is none.</summary>
    public static SchemaKind? Find(string word) =>
        word switch
        {
            "show" => SchemaKind.Show,
            "run" => SchemaKind.Run,
            "config" => SchemaKind.Config,
            "waivers" => SchemaKind.Waivers,
            "baseline" => SchemaKind.Baseline,
            _ => null,
        };

    /// <summary>The kind of a file by its name; a show when the name says nothing.</summary>
    /// <exception cref="UsageException">It is a device profile, which carries no format version.</exception>
    public static SchemaKind Of(string path)
    {
        var name = Path.GetFileName(path);
        return name.EndsWith(".profile.json", StringComparison.OrdinalIgnoreCase)
                ? throw new UsageException($"'{path}' is a device profile, which carries no format version: there is nothing to upgrade.")
            : name.EndsWith(".run.json", StringComparison.OrdinalIgnoreCase) ? SchemaKind.Run
            : name.Equals(ConfigSetup.FileName, StringComparison.OrdinalIgnoreCase) ? SchemaKind.Config
            : name.EndsWith("waivers.json", StringComparison.OrdinalIgnoreCase) ? SchemaKind.Waivers
            : name.EndsWith("baseline.json", StringComparison.OrdinalIgnoreCase) ? SchemaKind.Baseline
            : SchemaKind.Show;
    }
}
