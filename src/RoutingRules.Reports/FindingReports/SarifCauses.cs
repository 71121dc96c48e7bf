using System.Globalization;
using System.Text.Json;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Rules;
using static RoutingRules.Reports.FindingReports.JsonMembers;

namespace RoutingRules.Reports.FindingReports;

/// <summary>The cause of a finding as a related location of its SARIF result (SARIF 2.1.0, clause 3.27.22): where the repair changes the document.</summary>
internal static class SarifCauses
{
    /// <summary>Writes the location; nothing when no cause explains the finding.</summary>
    public static void Write(Utf8JsonWriter json, DocumentCheck document, List<ToldCause> told, Finding finding)
    {
        // The findings of a cause are those of the document themselves.
        if (told.Find(cause => cause.Findings.Exists(explained => ReferenceEquals(explained, finding))) is { } cause)
        {
            WriteObjects(json, "relatedLocations", [cause], one => WriteLocation(json, document, one));
        }
    }

    private static void WriteLocation(Utf8JsonWriter json, DocumentCheck document, ToldCause cause)
    {
        json.WriteNumber("id", cause.Number);
        json.WriteStartObject("physicalLocation");
        json.WriteStartObject("artifactLocation");
        json.WriteString("uri", SarifTool.Uri(document.PlacePath));
        json.WriteEndObject();
        if (cause.Offered.Repair.Change is { } change)
        {
            json.WriteStartObject("region");
            json.WriteNumber("startLine", change.Start.Line);
            json.WriteNumber("startColumn", change.Start.Column);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        if (!cause.Offered.Cause.Places.IsEmpty)
        {
            WriteObjects(
                json,
                "logicalLocations",
                cause.Offered.Cause.Places,
                place =>
                {
                    json.WriteString("fullyQualifiedName", JsonReport.Whole(place.Id));
                    json.WriteString("kind", JsonReport.Whole(place.Role));
                }
            );
        }

        json.WriteStartObject("message");
        json.WriteString(
            "text",
            JsonReport.Whole(string.Create(CultureInfo.InvariantCulture, $"Cause {cause.Number}: {cause.Title}. What to do: {cause.Orders}."))
        );
        json.WriteEndObject();
    }
}
