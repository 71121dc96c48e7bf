using System.Buffers;
using System.Text;
using System.Text.Json;
using RoutingRules.Documents.Text;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Writes rules as JSON, for programs: everything each says about itself, with its example.</summary>
/// <remarks>LF; the same rules give the same text.</remarks>
public static class RuleJson
{
    /// <summary>The rules in the order given.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="rules"/> is null.</exception>
    public static string Write(IEnumerable<RuleDescriptor> rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, JsonReport.Layout))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", 1);
            json.WriteStartArray("rules");
            foreach (var rule in rules)
            {
                Write(json, rule);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    private static void Write(Utf8JsonWriter json, RuleDescriptor rule)
    {
        json.WriteStartObject();
        json.WriteString("id", rule.Id);
        json.WriteString("name", rule.Name);
        json.WriteString("title", rule.Title);
        json.WriteString("family", RuleReport.Family(rule.Family));
        json.WriteString("severity", PlainText.Word(rule.Severity));
        json.WriteStartArray("severities");
        foreach (var severity in RuleReport.Severities(rule))
        {
            json.WriteStringValue(PlainText.Word(severity));
        }

        json.WriteEndArray();
        json.WriteString("checks", rule.Checks);
        json.WriteString("why", rule.Why);
        json.WriteString("remedy", rule.Remedy);
        json.WriteString("source", rule.Source);
        json.WriteString("fix", RuleReport.Word(rule.Fixability));
        json.WriteBoolean("alwaysCounts", WaiverCheck.IsFixed(rule));
        json.WriteStartArray("options");
        foreach (var option in rule.Options)
        {
            json.WriteStartObject();
            json.WriteString("name", option.Name);
            json.WriteString("doc", option.Doc);
            json.WriteNumber("default", option.Default);
            json.WriteNumber("minimum", option.Minimum);
            json.WriteNumber("maximum", option.Maximum);
            json.WriteBoolean("isWhole", option.IsWhole);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (RuleExample.Of(rule.Id) is { } example)
        {
            json.WriteStartObject("example");
            json.WriteString("says", example.Says);
            json.WriteString("bad", example.Bad);
            if (example.Good is { } good)
            {
                json.WriteString("good", good);
            }

            json.WriteEndObject();
        }

        json.WriteEndObject();
    }
}
