using System.Text.Json;
using RoutingRules.Model;
using RoutingRules.Planning.Comparing;
using RoutingRules.Profiles;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Rules;
using static RoutingRules.Reports.FindingReports.JsonMembers;

namespace RoutingRules.Reports.Answers;

/// <summary>Writes what differs between two shows as JSON after the published schema (<c>urn:routing-rules:comparison:1</c>).</summary>
/// <remarks>Indented UTF-8 without a byte order mark, LF, a line break at the end; the same comparison gives the same bytes.</remarks>
public static class ComparisonJson
{
    /// <summary>Writes a comparison.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="output">Where it is written; stays open.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(ShowComparison comparison, Stream output)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(output);
        using (var json = new Utf8JsonWriter(output, JsonReport.Layout))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", 1);
            json.WriteBoolean("same", comparison.IsEmpty);
            WriteSinks(json, comparison.Sinks);
            WriteDemands(json, comparison.Demands);
            WriteEntities(json, comparison.Entities);
            WriteFindings(json, "hazards", comparison.Hazards);
            WriteFindings(json, "newFindings", comparison.NewFindings);
            WriteFindings(json, "resolvedFindings", comparison.ResolvedFindings);
            WriteFindings(json, "unchangedFindings", comparison.UnchangedFindings);
            json.WriteEndObject();
        }

        output.Write("\n"u8);
    }

    internal static void WriteFindings(Utf8JsonWriter json, string name, ValueList<Finding> findings)
    {
        json.WriteStartArray(name);
        foreach (var finding in findings)
        {
            json.WriteStartObject();
            FindingJson.WriteMembers(json, finding, default);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteSinks(Utf8JsonWriter json, ValueList<SinkChange> sinks)
    {
        json.WriteStartArray("sinks");
        foreach (var change in sinks)
        {
            json.WriteStartObject();
            json.WriteString("at", change.At.ToString());
            json.WriteString("kind", change.Kind == PortKind.Output ? "output" : "sink");
            json.WriteString("effect", Word(change.Effect));
            WriteOptional(json, "before", change.Before?.ToString());
            WriteOptional(json, "after", change.After?.ToString());
            WriteOptional(json, "servedBefore", change.ServedBefore);
            WriteOptional(json, "servesAfter", change.ServesAfter);
            WriteOptional(json, "lineBefore", change.LineBefore);
            WriteOptional(json, "lineAfter", change.LineAfter);
            json.WriteBoolean("inEar", change.IsInEar);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteDemands(Utf8JsonWriter json, ValueList<DemandChange> demands)
    {
        json.WriteStartArray("demands");
        foreach (var change in demands)
        {
            json.WriteStartObject();
            json.WriteString("demand", JsonReport.Whole(change.Demand));
            json.WriteString("name", JsonReport.Whole(change.Name));
            json.WriteString("kind", change.IsFeed ? "feed" : "line");
            json.WriteString("fate", Word(change.Fate));
            WriteOptional(json, "was", change.Was);
            WriteOptional(json, "before", change.Before?.ToString());
            WriteOptional(json, "after", change.After?.ToString());
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteEntities(Utf8JsonWriter json, ValueList<EntityChange> entities)
    {
        json.WriteStartArray("entities");
        foreach (var change in entities)
        {
            json.WriteStartObject();
            json.WriteString("list", change.List);
            json.WriteString("kind", change.Kind);
            json.WriteString("id", JsonReport.Whole(change.Id));
            WriteOptional(json, "was", change.Was);
            json.WriteString("change", Word(change.Change));
            json.WriteStartArray("members");
            foreach (var member in change.Members)
            {
                json.WriteStartObject();
                json.WriteString("name", JsonReport.Whole(member.Name));
                WriteOptional(json, "before", member.Before);
                WriteOptional(json, "after", member.After);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
