using System.Globalization;
using System.Text.Json;
using RoutingRules.Checking.Facts.Documents;
using RoutingRules.Documents.Text;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Documents;

/// <summary>Reports content under <c>extensions</c> that is newer than what understands it. Unknown names are kept and passed over.</summary>
public sealed class ExtensionUnresolved : Rule<ResolvedShow>
{
    private readonly KnownExtension[] known;

    /// <summary>The rule for an engine that understands no extension; it never reports.</summary>
    public ExtensionUnresolved()
        : this([]) { }

    /// <summary>The rule for an engine that understands some extensions.</summary>
    /// <param name="known">The extensions, each name once.</param>
    /// <exception cref="ArgumentNullException"><paramref name="known"/> is null.</exception>
    public ExtensionUnresolved(IReadOnlyList<KnownExtension> known)
    {
        ArgumentNullException.ThrowIfNull(known);
        this.known = [.. known];
    }

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR1107",
            Name = "extension-unresolved",
            Title = "Extension newer than this program",
            Family = RuleFamily.Document,
            Severity = Severity.Warning,
            Checks = "Content under extensions that a plugin here understands is of a version that it understands.",
            Why = "What a newer program wrote there is kept, but nothing here acts on it, and it may matter for the show.",
            Remedy = "Update the plugin, or ask whoever wrote the document what the content means.",
            Source = "common practice, no source",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        if (known.Length == 0)
        {
            return;
        }

        var found = new List<(KnownExtension Extension, int Version, string Pointer, int Count)>();
        ExtensionWalk.Visit(
            context.Document,
            (data, pointer) =>
            {
                using var json = JsonDocument.Parse(data.Json);
                foreach (var extension in known)
                {
                    if (!json.RootElement.TryGetProperty(extension.Name, out var content))
                    {
                        continue;
                    }

                    context.LookedAt();
                    if (VersionOf(content) is { } version && version > extension.HighestVersion)
                    {
                        Count(found, extension, version, $"{pointer}/extensions/{JsonPointer.Escape(extension.Name)}");
                    }
                }
            }
        );

        foreach (var (extension, version, pointer, count) in found)
        {
            var others = count switch
            {
                1 => "",
                2 => " There is another place.",
                _ => string.Create(CultureInfo.InvariantCulture, $" There are {count - 1} other places."),
            };
            context.Report(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The content of '{extension.Name}' is of version {version}; versions up to {extension.HighestVersion} are understood here. It "
                        + $"is kept, but nothing acts on it.{others}"
                ),
                pointer,
                Entity.Of("extension", extension.Name),
                Entity.Of("version", version.ToString(CultureInfo.InvariantCulture))
            );
        }
    }

    private static int? VersionOf(JsonElement content) =>
        content.ValueKind == JsonValueKind.Object
        && content.TryGetProperty("version", out var version)
        && version.ValueKind == JsonValueKind.Number
        && version.TryGetInt32(out var number)
            ? number
            : null;

    private static void Count(
        List<(KnownExtension Extension, int Version, string Pointer, int Count)> found,
        KnownExtension extension,
        int version,
        string pointer
    )
    {
        for (var i = 0; i < found.Count; i++)
        {
            if (found[i].Extension == extension && found[i].Version == version)
            {
                found[i] = found[i] with { Count = found[i].Count + 1 };
                return;
            }
        }

        found.Add((extension, version, pointer, 1));
    }
}
