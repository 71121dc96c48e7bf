using System.Text.Json;
using RoutingRules.Documents.Text;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Fixing;
using RoutingRules.Rules;
using static RoutingRules.Reports.FindingReports.JsonMembers;

namespace RoutingRules.Reports.FindingReports;

/// <summary>What mending a show came to, as JSON.</summary>
internal static class FixJson
{
    public static void Write(Stream output, FixResult result, DocumentCheck after, JsonPatch patch)
    {
        WriteDocument(
            output,
            json =>
            {
                json.WriteString("path", JsonReport.Whole(after.Path));
                WriteObjects(json, "applied", result.Applied, applied => Write(json, applied));
                WriteObjects(
                    json,
                    "refused",
                    result.Refused,
                    refused =>
                    {
                        WriteFinding(json, refused.Finding);
                        json.WriteString("title", JsonReport.Whole(refused.Title));
                        json.WriteString("reason", JsonReport.Whole(refused.Reason));
                    }
                );
                FindingJson.WriteList(json, "remaining", after.Result.Findings, after);
                FindingJson.WriteWaived(json, after);
                FindingJson.WriteList(json, "known", after.Known, after);
                WriteList(json, "circle", result.Circle);
                json.WriteBoolean("stopped", result.IsStopped);
                json.WritePropertyName("patch");
                patch.WriteTo(json);
            }
        );
    }

    private static void Write(Utf8JsonWriter json, AppliedFix applied)
    {
        WriteFinding(json, applied.Finding);
        json.WriteString("title", JsonReport.Whole(applied.Fix.Title));
        json.WriteString("safety", PlainText.Word(applied.Fix.Safety));
        WriteOptional(json, "caution", applied.Fix.Caution);
        WriteList(json, "edits", applied.Fix.Edits.Select(ShowText.Describe));
        WriteObjects(
            json,
            "moves",
            applied.Moves,
            move =>
            {
                json.WriteString("at", move.At.ToString());
                WriteOptional(json, "before", move.Before?.ToString());
                WriteOptional(json, "after", move.After?.ToString());
            }
        );
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
