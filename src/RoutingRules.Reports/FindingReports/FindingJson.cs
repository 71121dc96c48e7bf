using System.Text.Json;
using RoutingRules.Documents.Text;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Rules;
using static RoutingRules.Reports.FindingReports.JsonMembers;

namespace RoutingRules.Reports.FindingReports;

/// <summary>A finding in the JSON report.</summary>
internal static class FindingJson
{
    /// <summary>Writes a list of findings.</summary>
    public static void WriteList(Utf8JsonWriter json, string name, ValueList<Finding> findings, DocumentCheck document) =>
        WriteObjects(json, name, findings, finding => WriteMembers(json, finding, document.OffersFor(finding)));

    /// <summary>Writes the list of waived findings.</summary>
    public static void WriteWaived(Utf8JsonWriter json, DocumentCheck document)
    {
        WriteObjects(
            json,
            "waived",
            document.Waived,
            waived =>
            {
                WriteMembers(json, waived.Finding, document.OffersFor(waived.Finding));
                json.WriteStartObject("waiver");
                json.WriteString("reason", JsonReport.Whole(waived.Waiver.Reason));
                json.WriteString("owner", JsonReport.Whole(waived.Waiver.Owner));
                json.WriteString("expires", PlainText.Day(waived.Waiver.Expires));
                json.WriteEndObject();
            }
        );
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
        WriteOptional(json, "line", finding.Line);
        WriteOptional(json, "column", finding.Column);
        json.WriteString("fingerprint", finding.Fingerprint());
        WriteObjects(json, "fixes", offers, offer => WriteOffer(json, offer));
    }

    internal static void WriteOffer(Utf8JsonWriter json, OfferedFix offer)
    {
        json.WriteString("title", JsonReport.Whole(offer.Fix.Title));
        json.WriteString("safety", PlainText.Word(offer.Fix.Safety));
        WriteOptional(json, "caution", offer.Fix.Caution);
        if (!offer.Fix.Choices.IsEmpty)
        {
            JsonMembers.WriteList(json, "choices", offer.Fix.Choices);
        }

        if (offer.Patch is { } patch)
        {
            json.WritePropertyName("patch");
            patch.WriteTo(json);
        }
    }

    public static void WriteEntities(Utf8JsonWriter json, ValueList<Entity> entities)
    {
        WriteObjects(
            json,
            "entities",
            entities,
            entity =>
            {
                json.WriteString("role", JsonReport.Whole(entity.Role));
                json.WriteString("id", JsonReport.Whole(entity.Id));
            }
        );
    }
}
