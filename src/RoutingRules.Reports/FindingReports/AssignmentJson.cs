using System.Text.Json;
using RoutingRules.Assignment;
using RoutingRules.Model;
using static RoutingRules.Reports.FindingReports.JsonMembers;

namespace RoutingRules.Reports.FindingReports;

/// <summary>The part of the JSON report that tells what an assignment came to.</summary>
internal static class AssignmentJson
{
    public static void Write(Utf8JsonWriter json, AssignmentResult result)
    {
        json.WriteStartObject("assignment");
        json.WriteString(
            "status",
            result.Status switch
            {
                AssignmentStatus.Optimal => "optimal",
                AssignmentStatus.Feasible => "feasible",
                AssignmentStatus.Stopped => "stopped",
                _ => "pins-contradict",
            }
        );
        json.WriteNumber("provenLevel", ProvenLevel(result.ProvenNumbers));
        json.WriteNumber("provenNumbers", result.ProvenNumbers);
        WhyJson.Write(json, result.Objective);
        WriteObjects(
            json,
            "placements",
            result.Placements,
            placement =>
            {
                json.WriteString("demand", placement.Demand);
                json.WriteString("at", placement.At.ToString());
                json.WriteBoolean("pinned", placement.IsPinned);
                json.WriteBoolean("kept", placement.IsKept);
            }
        );
        WriteObjects(json, "unplaced", result.Unplaced, unplaced => WhyJson.Write(json, unplaced));
        WriteList(json, "moved", result.Moved);
        json.WriteStartArray("contradictions");
        foreach (var set in result.Contradictions)
        {
            WriteItems(json, set);
        }

        json.WriteEndArray();
        WriteList(json, "removedStreams", result.RemovedStreams);
        WriteObjects(
            json,
            "removedReceivers",
            result.RemovedReceivers,
            receiver =>
            {
                json.WriteString("stream", JsonReport.Whole(receiver.Stream.Value));
                json.WriteString("at", receiver.At.ToString());
            }
        );
        WriteList(json, "silenced", result.Silenced);
        WriteList(json, "cleared", result.Cleared);
        WriteList(json, "notes", result.Notes);
        WhyJson.WriteUtilisation(json, result.Utilisation);
        WhyJson.WriteLinks(json, result.Links);
        json.WriteEndObject();
    }

    /// <summary>The last of the ten levels that is proven whole: the first has four numbers, the second two, the others one each.</summary>
    public static int ProvenLevel(int provenNumbers) =>
        provenNumbers switch
        {
            < 4 => 0,
            < 6 => 1,
            _ => provenNumbers - 4,
        };

    private static void WriteItems<T>(Utf8JsonWriter json, ValueList<T> items)
    {
        json.WriteStartArray();
        foreach (var item in items)
        {
            json.WriteStringValue(JsonReport.Whole(item!.ToString()!));
        }

        json.WriteEndArray();
    }
}
