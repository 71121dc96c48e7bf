using System.Text.Json;
using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Model;
using static RoutingRules.Reports.FindingReports.JsonMembers;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Writes why demands are where they are as JSON after the published schema (<c>urn:routing-rules:why:1</c>).</summary>
/// <remarks>Indented UTF-8 without a byte order mark, LF, a line break at the end; the same answer gives the same bytes.</remarks>
public static class WhyJson
{
    /// <summary>Writes an answer.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="output">Where it is written; stays open.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(WhyAnswer answer, Stream output)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(output);
        WriteDocument(
            output,
            json =>
            {
                json.WriteString("subject", JsonReport.Whole(answer.Subject));
                json.WriteString("status", Word(answer.Status));
                Write(json, answer.Objective);
                WriteObjects(json, "decisions", answer.Decisions, decision => Write(json, decision));
                if (answer.WhatIf is { } what)
                {
                    Write(json, what);
                }

                WriteUtilisation(json, answer.Utilisation);
                WriteLinks(json, answer.Links);
            }
        );
    }

    /// <summary>An entry of what found no place, for answers and for reports of assignments.</summary>
    internal static void Write(Utf8JsonWriter json, UnplacedDemand unplaced)
    {
        json.WriteString("demand", JsonReport.Whole(unplaced.Demand));
        WriteOptional(json, "sink", unplaced.Sink?.ToString());
        json.WriteString("reason", JsonReport.Whole(unplaced.Reason));
        WriteList(json, "conflict", unplaced.Conflict);
        json.WriteString("conflictProof", Word(unplaced.ConflictProof));
        WriteList(json, "conflictPoints", unplaced.ConflictPoints);
        WriteObjects(
            json,
            "relaxations",
            unplaced.Relaxations,
            relaxation =>
            {
                json.WriteString("kind", Word(relaxation.Kind));
                json.WriteString("subject", JsonReport.Whole(relaxation.Subject));
                json.WriteString("at", relaxation.At.ToString());
                json.WriteNumber("moves", relaxation.Moves);
            }
        );
    }

    internal static void WriteUtilisation(Utf8JsonWriter json, ValueList<DeviceUse> table)
    {
        WriteObjects(
            json,
            "utilisation",
            table,
            use =>
            {
                json.WriteString("device", use.Device.Value);
                json.WriteNumber("outputsUsed", use.OutputsUsed);
                json.WriteNumber("outputsUsable", use.OutputsUsable);
                json.WriteNumber("inputsUsed", use.InputsUsed);
                json.WriteNumber("inputsUsable", use.InputsUsable);
                json.WriteNumber("transmitBlocksUsed", use.TransmitBlocksUsed);
                json.WriteNumber("transmitBlockLimit", use.TransmitBlockLimit);
                json.WriteNumber("receiveBlocksUsed", use.ReceiveBlocksUsed);
                json.WriteNumber("receiveBlockLimit", use.ReceiveBlockLimit);
                json.WriteNumber("streamsReceived", use.StreamsReceived);
                WriteOptional(json, "streamsReceivedLimit", use.StreamsReceivedLimit);
            }
        );
    }

    internal static void WriteLinks(Utf8JsonWriter json, ValueList<LinkUse> table)
    {
        WriteObjects(
            json,
            "links",
            table,
            use =>
            {
                json.WriteString("link", use.Link.Value);
                json.WriteString("from", use.From.Value);
                json.WriteString("to", use.To.Value);
                json.WriteNumber("streams", use.Streams);
                json.WriteNumber("bitsPerSecond", use.BitsPerSecond);
                WriteOptional(json, "mostBitsPerSecond", use.MostBitsPerSecond);
            }
        );
    }

    private static void Write(Utf8JsonWriter json, WhyDecision decision)
    {
        json.WriteString("demand", JsonReport.Whole(decision.Demand));
        WriteOptional(json, "at", decision.At?.ToString());
        json.WriteString("basis", Word(decision.Basis));
        WriteList(json, "grounds", decision.Grounds);
        WriteObjects(
            json,
            "refusals",
            decision.Refusals,
            refusal =>
            {
                json.WriteString("cause", Word(refusal.Cause));
                WriteList(json, "points", refusal.Points);
                WriteList(json, "devices", refusal.Devices);
                WriteList(json, "by", refusal.By);
                WriteList(json, "reasons", refusal.Reasons);
                WriteLinks(json, refusal.Links);
                Write(json, refusal.Difference);
            }
        );
        if (decision.RunnerUp is { } second)
        {
            json.WriteStartObject("runnerUp");
            WriteOptional(json, "at", second.At?.ToString());
            Write(json, second.Objective);
            json.WriteBoolean("proven", second.IsProven);
            Write(json, second.Difference);
            WriteMoves(json, second.Moves);
            json.WriteEndObject();
        }

        WriteObjects(json, "unplaced", decision.Unplaced, unplaced => Write(json, unplaced));
    }

    private static void Write(Utf8JsonWriter json, WhatIf what)
    {
        json.WriteStartObject("whatIf");
        json.WriteString("demand", JsonReport.Whole(what.Demand));
        json.WriteString("point", what.Point.ToString());
        json.WriteBoolean("wanted", what.IsWanted);
        json.WriteBoolean("already", what.IsSoAlready);
        WriteOptional(json, "at", what.At?.ToString());
        json.WriteBoolean("proven", what.IsProven);
        WriteMoves(json, what.Moves);
        WriteList(json, "lost", what.Lost);
        WriteList(json, "contradiction", what.Contradiction);
        WriteList(json, "remarks", what.Remarks);
        json.WriteEndObject();
    }

    internal static void Write(Utf8JsonWriter json, ObjectiveVector? objective)
    {
        if (objective is null)
        {
            return;
        }

        json.WriteStartArray("objective");
        foreach (var number in objective.Values)
        {
            json.WriteNumberValue(number);
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, ObjectiveDifference? difference)
    {
        if (difference is not null)
        {
            json.WriteStartObject("difference");
            json.WriteNumber("number", difference.Number + 1);
            json.WriteNumber("by", difference.By);
            json.WriteEndObject();
        }
    }

    private static void WriteMoves(Utf8JsonWriter json, ValueList<MovedDemand> moves)
    {
        WriteObjects(
            json,
            "moves",
            moves,
            move =>
            {
                json.WriteString("demand", JsonReport.Whole(move.Demand));
                WriteOptional(json, "from", move.From?.ToString());
                WriteOptional(json, "to", move.To?.ToString());
                json.WriteBoolean("held", move.IsHeld);
            }
        );
    }
}
