using System.Text.Json;
using RoutingRules.Rules;

namespace RoutingRules.Reporting;

/// <summary>A finding in the JSON report.</summary>
internal static class FindingJson
{
    /// <summary>Writes the members of a finding into an object that is open.</summary>
    public static void WriteMembers(Utf8JsonWriter json, Finding finding)
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

        // No rule offers edits yet; they go here.
        json.WriteStartArray("fixes");
        json.WriteEndArray();
    }

    public static void WriteEntities(Utf8JsonWriter json, Model.ValueList<Entity> entities)
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
