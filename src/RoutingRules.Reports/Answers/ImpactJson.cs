using System.Text.Json;
using RoutingRules.Model;
using RoutingRules.Planning.Losses;
using RoutingRules.Reports.FindingReports;
using static RoutingRules.Reports.FindingReports.JsonMembers;

namespace RoutingRules.Reports.Answers;

/// <summary>Writes what each loss does to a show as JSON after the published schema (<c>urn:routing-rules:impact:1</c>).</summary>
/// <remarks>Indented UTF-8 without a byte order mark, LF, a line break at the end; the same answer gives the same bytes.</remarks>
public static class ImpactJson
{
    /// <summary>Writes an answer.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="output">Where it is written; stays open.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(ImpactAnswer answer, Stream output)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(output);
        using (var json = new Utf8JsonWriter(output, JsonReport.Layout))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", 1);
            json.WriteNumber("moves", answer.Moves);
            WriteLosses(json, "losses", answer.Losses);
            WriteLosses(json, "pairs", answer.Pairs);
            json.WriteNumber("pairsOmitted", answer.PairsOmitted);
            json.WriteStartArray("failureSets");
            foreach (var sets in answer.FailureSets)
            {
                Write(json, sets);
            }

            json.WriteEndArray();
            WriteList(json, "notArriving", answer.NotArriving);
            json.WriteEndObject();
        }

        output.Write("\n"u8);
    }

    private static void WriteLosses(Utf8JsonWriter json, string name, ValueList<LossImpact> losses)
    {
        json.WriteStartArray(name);
        foreach (var loss in losses)
        {
            Write(json, loss);
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, LossImpact loss)
    {
        json.WriteStartObject();
        json.WritePropertyName("lost");
        Write(json, loss.Lost);
        json.WriteBoolean("singlePoint", loss.IsSinglePoint);
        WriteList(json, "silences", loss.Silences);
        json.WriteStartArray("subjects");
        foreach (var subject in loss.Subjects)
        {
            Write(json, subject);
        }

        json.WriteEndArray();
        WriteList(json, "outputs", loss.Outputs);
        WriteList(json, "channels", loss.Channels);
        WriteList(json, "rerouted", loss.Rerouted);
        json.WriteNumber("feedsKept", loss.FeedsKept);
        json.WriteNumber("linesKept", loss.LinesKept);
        WriteList(json, "remarks", loss.Remarks);
        if (loss.Plan is { } plan)
        {
            Write(json, plan);
        }

        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, LostSubject subject)
    {
        json.WriteStartObject();
        json.WriteString("kind", subject.Role is null ? "line" : "feed");
        json.WriteString("id", JsonReport.Whole(subject.Subject));
        json.WriteString("name", JsonReport.Whole(subject.Name));
        WriteOptional(json, "role", subject.Role?.Value);
        if (subject.IsInEar)
        {
            json.WriteBoolean("inEar", true);
        }

        json.WriteString("priority", subject.Priority switch
        {
            Priority.Critical => "critical",
            Priority.High => "high",
            Priority.Low => "low",
            _ => "normal",
        });
        json.WriteBoolean("protected", subject.IsProtected);
        WriteOptional(json, "person", subject.Person);
        json.WriteString("fate", subject.Fate switch
        {
            LossFate.BackedUp => "backed-up",
            LossFate.Partly => "partly",
            _ => "lost",
        });
        WriteList(json, "lostAt", subject.LostAt);
        WriteList(json, "remainsAt", subject.RemainsAt);
        WriteList(json, "backups", subject.Backups);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, FallbackPlan plan)
    {
        json.WriteStartObject("plan");
        json.WriteNumber("moves", plan.Moves);
        json.WriteStartArray("steps");
        foreach (var step in plan.Steps)
        {
            Write(json, step);
        }

        json.WriteEndArray();
        json.WriteStartArray("recovered");
        foreach (var recovered in plan.Recovered)
        {
            json.WriteStartObject();
            json.WriteString("demand", JsonReport.Whole(recovered.Demand));
            json.WriteString("from", recovered.From.ToString());
            json.WriteString("to", recovered.To.ToString());
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("unrecovered");
        foreach (var unrecovered in plan.Unrecovered)
        {
            json.WriteStartObject();
            json.WriteString("demand", JsonReport.Whole(unrecovered.Demand));
            WriteOptional(json, "sink", unrecovered.Sink?.ToString());
            json.WriteString("reason", JsonReport.Whole(unrecovered.Reason));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("displaced");
        foreach (var displaced in plan.Displaced)
        {
            json.WriteStartObject();
            json.WriteString("demand", JsonReport.Whole(displaced.Demand));
            json.WriteString("at", displaced.At.ToString());
            json.WriteString("by", JsonReport.Whole(displaced.By));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        WriteList(json, "newErrors", plan.NewErrors);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, FallbackStep step)
    {
        json.WriteStartObject();
        json.WriteString("kind", step.Kind switch
        {
            FallbackStepKind.Pull => "pull",
            FallbackStepKind.Replug => "replug",
            FallbackStepKind.Stream => "stream",
            _ => "route",
        });
        json.WriteString("device", step.Device.Value);
        WriteOptional(json, "demand", step.Demand);
        WriteOptional(json, "from", step.From?.ToString());
        WriteOptional(json, "to", step.To?.ToString());
        if (step.Kind is FallbackStepKind.Replug or FallbackStepKind.Pull)
        {
            WriteList(json, "cableTo", step.CableTo);
        }

        if (step.Kind == FallbackStepKind.Replug)
        {
            json.WriteBoolean("ownCable", step.HasOwnCable);
            json.WriteBoolean("elsewhere", step.IsElsewhere);
        }

        if (step.StreamId is { } id)
        {
            json.WriteStartObject("stream");
            json.WriteString("id", id.Value);
            WriteStream(json, step.Stream);
            json.WriteEndObject();
        }

        if (step.Route is { } route)
        {
            json.WriteStartObject("route");
            WriteOptional(json, "from", route.From?.ToString());
            json.WriteString("to", route.To.ToString());
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void WriteStream(Utf8JsonWriter json, AudioStream? stream)
    {
        if (stream is null)
        {
            return;
        }

        json.WriteString("from", stream.From.ToString());
        json.WriteStartArray("to");
        foreach (var receiver in stream.To)
        {
            json.WriteStartObject();
            json.WriteString("at", receiver.At.ToString());
            WriteOptional(json, "channels", receiver.Channels?.ToString());
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, FailureSets sets)
    {
        json.WriteStartObject();
        json.WriteString("feed", JsonReport.Whole(sets.Feed));
        json.WriteString("name", JsonReport.Whole(sets.Name));
        json.WriteString("role", sets.Role.Value);
        if (sets.Smallest is { } smallest)
        {
            json.WriteNumber("smallest", smallest);
        }

        json.WriteNumber("limit", sets.Limit);
        json.WriteStartArray("sets");
        foreach (var set in sets.Sets)
        {
            Write(json, set);
        }

        json.WriteEndArray();
        json.WriteNumber("omitted", sets.Omitted);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, ValueList<LostThing> things)
    {
        json.WriteStartArray();
        foreach (var thing in things)
        {
            json.WriteStartObject();
            json.WriteString("kind", ImpactWords.Kind(thing.Kind));
            json.WriteString("id", JsonReport.Whole(thing.Id));
            WriteOptional(json, "label", thing.Label);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
