using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Writes the catalogue of rules from their descriptors: the page for people, and the schema of their options.</summary>
/// <remarks>LF; the same rules give the same text.</remarks>
public static class RuleCatalogue
{
    /// <summary>The name of the page's file.</summary>
    public const string PageName = "rules.md";

    /// <summary>The name of the schema's file.</summary>
    public const string OptionsSchemaName = "rule-options.schema.json";

    /// <summary>One page of Markdown: a table of all rules, then each with everything it says about itself.</summary>
    /// <param name="rules">The rules, by id.</param>
    public static string Markdown(ValueList<RuleDescriptor> rules)
    {
        var page = new StringBuilder(
            "# Rules\n\nWritten from the rules themselves by `routing-rules schemas FOLDER`; `routing-rules rules ID` tells the same about one.\n"
        );
        page.Append("\n| id | name | severity | what it finds |\n|---|---|---|---|\n");
        foreach (var rule in rules)
        {
            page.Append(CultureInfo.InvariantCulture, $"| [{rule.Id}](#{Anchor(rule)}) | `{rule.Name}` | {RuleReport.Words(rule)} | {Text(rule.Title)} |\n");
        }

        foreach (var family in rules.GroupBy(rule => rule.Family).OrderBy(family => family.Key))
        {
            page.Append(CultureInfo.InvariantCulture, $"\n## RR{(int)family.Key}: {RuleReport.Family(family.Key)}\n");
            foreach (var rule in family)
            {
                Write(page, rule);
            }
        }

        return page.ToString();
    }

    /// <summary>
    /// A schema for the member <c>rules</c> of configurations that knows the built-in rules: their ids and names, the options of each, and their ranges.
    /// Configurations that set rules of plugins do not meet it.
    /// </summary>
    /// <param name="rules">The rules, by id; those that always count are left out.</param>
    public static string OptionsSchema(ValueList<RuleDescriptor> rules)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, JsonReport.Layout))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "http://json-schema.org/draft-07/schema#");
            json.WriteString("$id", "urn:routing-rules:rule-options:1");
            json.WriteString("description", "A configuration as far as it sets built-in rules: which there are, which options each has, and their ranges.");
            json.WriteString("type", "object");
            json.WriteStartObject("properties");
            json.WriteStartObject("rules");
            json.WriteString("type", "array");
            json.WriteStartObject("items");
            json.WriteStartArray("anyOf");
            WriteFamilies(json);
            foreach (var rule in rules.Where(rule => !WaiverCheck.IsFixed(rule)))
            {
                WriteSetting(json, rule);
            }

            json.WriteEndArray();
            json.WriteEndObject();
            json.WriteEndObject();
            json.WriteEndObject();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    private static void Write(StringBuilder page, RuleDescriptor rule)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n### {rule.Id} {rule.Name}\n\n**{Text(rule.Title)}** ({RuleReport.Words(rule)})\n\n");
        page.Append(CultureInfo.InvariantCulture, $"- Checks: {Text(rule.Checks)}\n- Why: {Text(rule.Why)}\n- What to do: {Text(rule.Remedy)}\n");
        foreach (var option in rule.Options)
        {
            page.Append(
                CultureInfo.InvariantCulture,
                $"- Option `{option.Name}`: {Text(option.Doc)} {(option.IsWhole ? "Whole number f" : "F")}rom {option.Minimum} to "
                    + $"{option.Maximum}, usually {option.Default}.\n"
            );
        }

        page.Append(CultureInfo.InvariantCulture, $"- Fix by the engine: {RuleReport.Word(rule.Fixability)}\n");
        page.Append(WaiverCheck.IsFixed(rule) ? "- Always counts: it can be neither switched off nor waived.\n" : "");
        page.Append(CultureInfo.InvariantCulture, $"- Source: {Text(rule.Source)}\n");
        if (RuleExample.Of(rule.Id) is { } example)
        {
            page.Append(CultureInfo.InvariantCulture, $"\nA piece of a show that it finds fault with: {Text(example.Says)}\n\n```json\n{example.Bad}\n```\n");
            page.Append(example.Good is { } good ? $"\nA piece of one that passes:\n\n```json\n{good}\n```\n" : "");
        }
    }

    /// <summary>Settings of whole families may name options of any of their rules; the engine checks these.</summary>
    private static void WriteFamilies(Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("description", "All rules whose ids begin so.");
        json.WriteString("type", "object");
        json.WriteStartObject("properties");
        json.WriteStartObject("rule");
        json.WriteString("type", "string");
        json.WriteString("pattern", @"\*$");
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteSetting(Utf8JsonWriter json, RuleDescriptor rule)
    {
        json.WriteStartObject();
        json.WriteString("description", rule.Title);
        json.WriteString("type", "object");
        json.WriteStartObject("properties");
        json.WriteStartObject("rule");
        json.WriteStartArray("enum");
        json.WriteStringValue(rule.Id);
        json.WriteStringValue(rule.Name);
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteStartObject("options");
        json.WriteString("type", "array");
        if (rule.Options.IsEmpty)
        {
            json.WriteNumber("maxItems", 0);
        }
        else
        {
            WriteOptions(json, rule.Options);
        }

        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteOptions(Utf8JsonWriter json, ValueList<RuleOption> options)
    {
        json.WriteStartObject("items");
        json.WriteStartArray("anyOf");
        foreach (var option in options)
        {
            json.WriteStartObject();
            json.WriteString("description", string.Create(CultureInfo.InvariantCulture, $"{option.Doc} Usually {option.Default}."));
            json.WriteString("type", "object");
            json.WriteStartObject("properties");
            json.WriteStartObject("name");
            json.WriteStartArray("enum");
            json.WriteStringValue(option.Name);
            json.WriteEndArray();
            json.WriteEndObject();
            json.WriteStartObject("value");
            json.WriteString("type", option.IsWhole ? "integer" : "number");
            json.WriteNumber("minimum", option.Minimum);
            json.WriteNumber("maximum", option.Maximum);
            json.WriteEndObject();
            json.WriteEndObject();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static string Anchor(RuleDescriptor rule) => $"{rule.Id} {rule.Name}".ToLowerInvariant().Replace(' ', '-');

    private static string Text(string text) => MarkdownText.Escape(text);
}
