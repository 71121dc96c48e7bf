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
        WriteDocument(
            output,
            json =>
            {
                json.WriteBoolean("same", comparison.IsEmpty);
                WriteSinks(json, comparison.Sinks);
                WriteDemands(json, comparison.Demands);
                WriteEntities(json, comparison.Entities);
                WriteFindings(json, "hazards", comparison.Hazards);
                WriteFindings(json, "newFindings", comparison.NewFindings);
                WriteFindings(json, "resolvedFindings", comparison.ResolvedFindings);
                WriteFindings(json, "unchangedFindings", comparison.UnchangedFindings);
            }
        );
    }

    internal static void WriteFindings(Utf8JsonWriter json, string name, ValueList<Finding> findings)
    {
        WriteObjects(json, name, findings, finding => FindingJson.WriteMembers(json, finding, default));
    }

    private static void WriteSinks(Utf8JsonWriter json, ValueList<SinkChange> sinks)
    {
        WriteObjects(
            json,
            "sinks",
            sinks,
            change =>
            {
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
            }
        );
    }

    private static void WriteDemands(Utf8JsonWriter json, ValueList<DemandChange> demands)
    {
        WriteObjects(
            json,
            "demands",
            demands,
            change =>
            {
                json.WriteString("demand", JsonReport.Whole(change.Demand));
                json.WriteString("name", JsonReport.Whole(change.Name));
                json.WriteString("kind", change.IsFeed ? "feed" : "line");
                json.WriteString("fate", Word(change.Fate));
                WriteOptional(json, "was", change.Was);
                WriteOptional(json, "before", change.Before?.ToString());
                WriteOptional(json, "after", change.After?.ToString());
            }
        );
    }

    private static void WriteEntities(Utf8JsonWriter json, ValueList<EntityChange> entities)
    {
        WriteObjects(
            json,
            "entities",
            entities,
            change =>
            {
                json.WriteString("list", change.List);
                json.WriteString("kind", change.Kind);
                json.WriteString("id", JsonReport.Whole(change.Id));
                WriteOptional(json, "was", change.Was);
                json.WriteString("change", Word(change.Change));
                WriteObjects(
                    json,
                    "members",
                    change.Members,
                    member =>
                    {
                        json.WriteString("name", JsonReport.Whole(member.Name));
                        WriteOptional(json, "before", member.Before);
                        WriteOptional(json, "after", member.After);
                    }
                );
            }
        );
    }
}
