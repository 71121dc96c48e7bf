using System.Text.Json;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>The tool of a SARIF run with its rules, and references to them.</summary>
internal sealed class SarifTool
{
    private readonly ValueList<RuleDescriptor> rules;
    private readonly Dictionary<string, int> index = new(StringComparer.Ordinal);

    public SarifTool(ValueList<RuleDescriptor> rules)
    {
        this.rules = rules;
        for (var i = 0; i < rules.Count; i++)
        {
            index.TryAdd(rules[i].Id, i);
        }
    }

    public void Write(Utf8JsonWriter json)
    {
        json.WriteStartObject("tool");
        json.WriteStartObject("driver");
        json.WriteString("name", "RoutingRules");
        json.WriteString("semanticVersion", typeof(SarifTool).Assembly.GetName().Version!.ToString(3));
        json.WriteStartArray("rules");
        foreach (var rule in rules)
        {
            Write(json, rule);
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    /// <summary>Writes <c>ruleId</c>, and <c>ruleIndex</c> where the rule is listed.</summary>
    public void WriteRule(Utf8JsonWriter json, string rule)
    {
        json.WriteString("ruleId", rule);
        if (index.TryGetValue(rule, out var at))
        {
            json.WriteNumber("ruleIndex", at);
        }
    }

    /// <summary>Writes the members of a reference to a rule.</summary>
    public void WriteReference(Utf8JsonWriter json, string rule)
    {
        json.WriteString("id", rule);
        if (index.TryGetValue(rule, out var at))
        {
            json.WriteNumber("index", at);
        }
    }

    /// <summary>
    /// A path as a URI reference (RFC 3986): absolute ones as <c>file</c> URIs, others relative, other characters as percent codes of their UTF-8.
    /// </summary>
    public static string Uri(string path)
    {
        var parts = path.Replace('\\', '/').Split('/').Select(part => System.Uri.EscapeDataString(JsonReport.Whole(part)));
        var joined = string.Join('/', parts);
        var hasDrive = path.Length > 2 && char.IsAsciiLetter(path[0]) && path[1] == ':' && (path[2] is '/' or '\\');
        return joined.StartsWith('/') ? "file://" + joined
            : hasDrive ? $"file:///{path[0]}:{joined[4..]}"
            : joined;
    }

    private static void Write(Utf8JsonWriter json, RuleDescriptor rule)
    {
        json.WriteStartObject();
        json.WriteString("id", rule.Id);
        json.WriteString("name", Pascal(rule.Name));
        WriteText(json, "shortDescription", rule.Title + ".");
        WriteText(json, "fullDescription", rule.Checks);
        WriteText(json, "help", $"{rule.Why} What to do: {rule.Remedy} Source: {rule.Source}.");
        json.WriteStartObject("defaultConfiguration");
        json.WriteString("level", PlainText.Word(rule.Severity));
        json.WriteEndObject();
        json.WriteStartObject("properties");
        json.WriteString("name", rule.Name);
        json.WriteString("family", RuleReport.Family(rule.Family));
        json.WriteString("source", rule.Source);
        json.WriteString("fixability", RuleReport.Word(rule.Fixability));
        json.WriteEndObject();
        json.WriteEndObject();
    }

    /// <summary>SARIF asks for rule names in Pascal case.</summary>
    private static string Pascal(string name) =>
        string.Concat(name.Split('-', StringSplitOptions.RemoveEmptyEntries).Select(word => char.ToUpperInvariant(word[0]) + word[1..]));

    private static void WriteText(Utf8JsonWriter json, string name, string text)
    {
        json.WriteStartObject(name);
        json.WriteString("text", JsonReport.Whole(text));
        json.WriteEndObject();
    }
}
