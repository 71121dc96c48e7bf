using System.Text.Encodings.Web;
using System.Text.Json;
using RoutingRules.Fixing;
using RoutingRules.Rules;

namespace RoutingRules.Cli.Output;

/// <summary>Tells as JSON what mending a show came to.</summary>
internal static class FixJson
{
    private static readonly JsonWriterOptions Layout = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static void Write(Stream output, string name, FixResult result, JsonPatch patch)
    {
        using (var json = new Utf8JsonWriter(output, Layout))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", 1);
            json.WriteString("path", name);
            json.WriteStartArray("applied");
            foreach (var applied in result.Applied)
            {
                WriteApplied(json, applied);
            }

            json.WriteEndArray();
            json.WriteStartArray("refused");
            foreach (var refused in result.Refused)
            {
                json.WriteStartObject();
                WriteFinding(json, refused.Finding);
                json.WriteString("title", refused.Title);
                json.WriteString("reason", refused.Reason);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("remaining");
            foreach (var finding in result.After.Findings)
            {
                json.WriteStartObject();
                WriteFinding(json, finding);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("circle");
            foreach (var rule in result.Circle)
            {
                json.WriteStringValue(rule);
            }

            json.WriteEndArray();
            json.WriteBoolean("stopped", result.IsStopped);
            json.WritePropertyName("patch");
            patch.WriteTo(json);
            json.WriteEndObject();
        }

        output.Write("\n"u8);
    }

    private static void WriteApplied(Utf8JsonWriter json, AppliedFix applied)
    {
        json.WriteStartObject();
        WriteFinding(json, applied.Finding);
        json.WriteString("title", applied.Fix.Title);
        json.WriteString("safety", FixAccount.Word(applied.Fix.Safety));
        if (applied.Fix.Caution is { } caution)
        {
            json.WriteString("caution", caution);
        }

        json.WriteStartArray("edits");
        foreach (var edit in applied.Fix.Edits)
        {
            json.WriteStringValue(ShowText.Describe(edit));
        }

        json.WriteEndArray();
        json.WriteStartArray("moves");
        foreach (var move in applied.Moves)
        {
            json.WriteStartObject();
            json.WriteString("at", move.At.ToString());
            json.WriteString("before", move.Before?.ToString());
            json.WriteString("after", move.After?.ToString());
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteFinding(Utf8JsonWriter json, Finding finding)
    {
        json.WriteString("rule", finding.Rule);
        json.WriteString("name", finding.Name);
        json.WriteString("severity", FixAccount.Word(finding.Severity));
        json.WriteString("message", finding.Message);
        json.WriteString("fingerprint", finding.Fingerprint());
    }
}
