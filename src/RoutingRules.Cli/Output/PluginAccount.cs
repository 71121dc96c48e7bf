using System.Globalization;
using System.Text.Json;
using RoutingRules.Engine.Plugins;
using RoutingRules.Reports.FindingReports;

namespace RoutingRules.Cli.Output;

/// <summary>Lists what is built in and what plugins bring.</summary>
internal static class PluginAccount
{
    private const int NameWidth = 12;

    public static void Write(Stream output, RoutingEngine builtIn, IReadOnlyList<PluginContents> plugins, bool isJson)
    {
        var all = new List<Entry>
        {
            new(
                "built in",
                typeof(RoutingEngine).Assembly.GetName().Version!.ToString(3),
                "What every engine of this tool has",
                [
                    ("rules", [.. builtIn.Catalogue.Select(rule => $"{rule.Id} {rule.Name}")]),
                    ("fixes for", [.. builtIn.FixProviders.Select(provider => provider.RuleId).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)]),
                    ("profiles", [.. builtIn.Profiles.Ids.Select(id => id.Value)]),
                    ("strategies", [.. builtIn.Strategies.Select(strategy => strategy.Name)]),
                    ("formats", [.. ReportFormats.All.Select(format => format.Name)]),
                ]
            ),
        };
        all.AddRange(
            plugins.Select(plugin => new Entry(
                plugin.Info.Id,
                plugin.Info.Version,
                plugin.Info.Title,
                [
                    ("rules", [.. plugin.Rules.Select(rule => $"{rule.Id} {rule.Name}")]),
                    ("fixes for", [.. plugin.FixedRules]),
                    ("profiles", [.. plugin.Profiles.Select(id => id.Value)]),
                    ("strategies", [.. plugin.Strategies]),
                ]
            ))
        );
        if (isJson)
        {
            WriteJson(output, all);
        }
        else
        {
            WriteText(output, all);
        }
    }

    private sealed record Entry(string Id, string Version, string Title, (string Kind, string[] Names)[] Brings);

    private static void WriteText(Stream output, List<Entry> all)
    {
        using var text = Texts.Over(output);
        foreach (var entry in all)
        {
            text.Write($"{SafeText.Show($"{entry.Id} {entry.Version}: {entry.Title}")}\n");
            foreach (var (kind, names) in entry.Brings)
            {
                if (names.Length > 0)
                {
                    text.Write(
                        SafeText.Show(string.Create(CultureInfo.InvariantCulture, $"  {kind.PadRight(NameWidth)}{names.Length}: {NameList.Of(names)}")) + "\n"
                    );
                }
            }

            text.Write(entry == all[^1] ? "" : "\n");
        }

        if (all.Count == 1)
        {
            text.Write("\nNo plugin is loaded; --plugin FILE loads one.\n");
        }
    }

    private static void WriteJson(Stream output, List<Entry> all)
    {
        using (var json = new Utf8JsonWriter(output, Texts.Json))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", 1);
            WriteEntry(json, "builtIn", all[0]);
            json.WriteStartArray("plugins");
            foreach (var entry in all.Skip(1))
            {
                WriteEntry(json, null, entry);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        output.Write("\n"u8);
    }

    private static void WriteEntry(Utf8JsonWriter json, string? name, Entry entry)
    {
        if (name is null)
        {
            json.WriteStartObject();
            json.WriteString("id", entry.Id);
        }
        else
        {
            json.WriteStartObject(name);
        }

        json.WriteString("version", entry.Version);
        json.WriteString("title", entry.Title);
        foreach (var (kind, names) in entry.Brings)
        {
            json.WriteStartArray(kind == "fixes for" ? "fixesFor" : kind);
            foreach (var text in names)
            {
                json.WriteStringValue(kind == "rules" ? text.Split(' ')[0] : text);
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
    }
}
