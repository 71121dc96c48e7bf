using System.Text.Json;
using RoutingRules.Documents.Text;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>A finding in the JSON report.</summary>
internal static class FindingJson
{
    /// <summary>Writes a list of findings.</summary>
    public static void WriteList(Utf8JsonWriter json, string name, ValueList<Finding> findings, DocumentCheck document)
    {
        json.WriteStartArray(name);
        foreach (var finding in findings)
        {
            json.WriteStartObject();
            WriteMembers(json, finding, document.OffersFor(finding));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>Writes the list of waived findings.</summary>
    public static void WriteWaived(Utf8JsonWriter json, DocumentCheck document)
    {
        json.WriteStartArray("waived");
        foreach (var waived in document.Waived)
        {
            json.WriteStartObject();
            WriteMembers(json, waived.Finding, document.OffersFor(waived.Finding));
            json.WriteStartObject("waiver");
            json.WriteString("reason", JsonReport.Whole(waived.Waiver.Reason));
            json.WriteString("owner", JsonReport.Whole(waived.Waiver.Owner));
            json.WriteString("expires", PlainText.Day(waived.Waiver.Expires));
            json.WriteEndObject();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>Writes the members of a finding into an object that is open.</summary>
    public static void WriteMembers(Utf8JsonWriter json, Finding finding, ValueList<OfferedFix> offers)
    {
        json.WriteString("rule", finding.Rule);
        json.WriteString("name", finding.Name);
        json.WriteString("severity", PlainText.Word(finding.Severity));
        json.WriteString("message", JsonReport.Whole(finding.Message));
        if (finding.Remedy.Length > 0)
        {
            json.WriteString("remedy", JsonReport.Whole(finding.Remedy));
        }

        WriteEntities(json, finding.Entities);
        json.WriteString("pointer", JsonReport.Whole(finding.Pointer));
        if (finding.Line is { } line)
        {
            json.WriteNumber("line", line);
        }

        if (finding.Column is { } column)
        {
            json.WriteNumber("column", column);
        }

        json.WriteString("fingerprint", finding.Fingerprint());
        json.WriteStartArray("fixes");
        foreach (var offer in offers)
        {
            WriteOffer(json, offer);
        }

        json.WriteEndArray();
    }

    private static void WriteOffer(Utf8JsonWriter json, OfferedFix offer)
    {
        json.WriteStartObject();
        json.WriteString("title", JsonReport.Whole(offer.Fix.Title));
        json.WriteString("safety", PlainText.Word(offer.Fix.Safety));
        if (offer.Fix.Caution is { } caution)
        {
            json.WriteString("caution", JsonReport.Whole(caution));
        }

        if (!offer.Fix.Choices.IsEmpty)
        {
            json.WriteStartArray("choices");
            foreach (var choice in offer.Fix.Choices)
            {
                json.WriteStringValue(JsonReport.Whole(choice));
            }

            json.WriteEndArray();
        }

        if (offer.Patch is { } patch)
        {
            json.WritePropertyName("patch");
            patch.WriteTo(json);
        }

        json.WriteEndObject();
    }

    public static void WriteEntities(Utf8JsonWriter json, ValueList<Entity> entities)
    {
        json.WriteStartArray("entities");
        foreach (var entity in entities)
        {
            json.WriteStartObject();
            json.WriteString("role", JsonReport.Whole(entity.Role));
            json.WriteString("id", JsonReport.Whole(entity.Id));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
