using System.Text.Json;
using RoutingRules.Engine.DocumentRuns;
using static RoutingRules.Reports.FindingReports.JsonMembers;

namespace RoutingRules.Reports.FindingReports;

/// <summary>The causes in the JSON report.</summary>
internal static class CauseJson
{
    /// <summary>Writes the list; nothing when nobody asked for causes or there are none.</summary>
    public static void Write(Utf8JsonWriter json, DocumentCheck document)
    {
        var told = ToldCause.Of(document);
        if (told.Count == 0)
        {
            return;
        }

        WriteObjects(
            json,
            "causes",
            told,
            cause =>
            {
                json.WriteNumber("number", cause.Number);
                json.WriteString("title", JsonReport.Whole(cause.Title));
                json.WriteString("confidence", Word(cause.Confidence));
                JsonMembers.WriteList(json, "findings", cause.Findings.Select(finding => finding.Fingerprint()));
                WriteObjects(
                    json,
                    "places",
                    cause.Offered.Cause.Places,
                    place =>
                    {
                        json.WriteString("role", JsonReport.Whole(place.Role));
                        json.WriteString("id", JsonReport.Whole(place.Id));
                    }
                );
                json.WriteStartObject("repair");
                FindingJson.WriteOffer(json, cause.Offered.Repair);
                json.WriteEndObject();
                if (!cause.Offered.Alternatives.IsEmpty)
                {
                    WriteObjects(json, "alternatives", cause.Offered.Alternatives, offer => FindingJson.WriteOffer(json, offer));
                }
            }
        );
    }
}
