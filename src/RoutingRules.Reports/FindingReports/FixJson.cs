using System.Text.Json;
using RoutingRules.Documents.Text;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Fixing;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>What mending a show came to, as JSON.</summary>
internal static class FixJson
{
    public static void Write(Stream output, FixResult result, DocumentCheck after, JsonPatch patch)
    {
        using (var json = new Utf8JsonWriter(output, JsonReport.Layout))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", 1);
            json.WriteString("path", JsonReport.Whole(after.Path));
            json.WriteStartArray("applied");
            foreach (var applied in result.Applied)
            {
                Write(json, applied);
            }

            json.WriteEndArray();
            json.WriteStartArray("refused");
            foreach (var refused in result.Refused)
            {
                json.WriteStartObject();
                WriteFinding(json, refused.Finding);
                json.WriteString("title", JsonReport.Whole(refused.Title));
                json.WriteString("reason", JsonReport.Whole(refused.Reason));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            FindingJson.WriteList(json, "remaining", after.Result.Findings, after);
            FindingJson.WriteWaived(json, after);
            FindingJson.WriteList(json, "known", after.Known, after);
            JsonMembers.WriteList(json, "circle", result.Circle);
            json.WriteBoolean("stopped", result.IsStopped);
            json.WritePropertyName("patch");
            patch.WriteTo(json);
            json.WriteEndObject();
        }

        output.Write("\n"u8);
    }

    private static void Write(Utf8JsonWriter json, AppliedFix applied)
    {
        json.WriteStartObject();
        WriteFinding(json, applied.Finding);
        json.WriteString("title", JsonReport.Whole(applied.Fix.Title));
        json.WriteString("safety", PlainText.Word(applied.Fix.Safety));
        JsonMembers.WriteOptional(json, "caution", applied.Fix.Caution);
        JsonMembers.WriteList(json, "edits", applied.Fix.Edits.Select(ShowText.Describe));
        json.WriteStartArray("moves");
        foreach (var move in applied.Moves)
        {
            json.WriteStartObject();
            json.WriteString("at", move.At.ToString());
            JsonMembers.WriteOptional(json, "before", move.Before?.ToString());
            JsonMembers.WriteOptional(json, "after", move.After?.ToString());
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteFinding(Utf8JsonWriter json, Finding finding)
    {
        json.WriteString("rule", finding.Rule);
        json.WriteString("name", finding.Name);
        json.WriteString("severity", PlainText.Word(finding.Severity));
        json.WriteString("message", JsonReport.Whole(finding.Message));
        json.WriteString("fingerprint", finding.Fingerprint());
    }
}
